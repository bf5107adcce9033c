using System.Buffers;
using System.Buffers.Binary;
using System.Runtime.InteropServices;

namespace Framing.Fits;

/// <summary>An image of a FITS file: its shape, and its samples on demand.</summary>
/// <remarks>
/// <para>Rows are counted as they are stored: row 0 is y = 1 of FITS. Nothing is held in memory.</para>
/// <para>Reading is safe from several threads at a time, as long as the file is not closed.</para>
/// </remarks>
public sealed class FitsImage
{
    /// <summary>Stored bytes decoded at a time: small enough to stay in the processor's second cache.</summary>
    private const int ChunkBytes = 256 * 1024;

    private readonly ByteSource source;
    private readonly long start;

    internal FitsImage(
        ByteSource source,
        long start,
        int width,
        int height,
        int planes,
        SampleScaling scaling
    )
    {
        this.source = source;
        this.start = start;
        Width = width;
        Height = height;
        Planes = planes;
        Scaling = scaling;
    }

    /// <summary>Samples along the first axis (NAXIS1), 1 or more.</summary>
    public int Width { get; }

    /// <summary>Rows (NAXIS2), 1 or more.</summary>
    public int Height { get; }

    /// <summary>Planes one after another (NAXIS3): 1 for one colour, 3 for red, green, blue.</summary>
    public int Planes { get; }

    /// <summary>How stored samples become values.</summary>
    public SampleScaling Scaling { get; }

    /// <summary>True when the file keeps the colours of a pixel side by side; rows are given plane by plane all the same.</summary>
    public bool IsInterleaved { get; internal init; }

    /// <summary>Reads whole rows of a plane as values.</summary>
    /// <param name="plane">The plane, from 0.</param>
    /// <param name="firstRow">The first row, from 0, as stored.</param>
    /// <param name="values">Takes the values; its length is a whole number of rows. NaN where a sample is not defined.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such plane or not so many rows.</exception>
    /// <exception cref="UnreadableFileException">The file cannot be read any more.</exception>
    public void ReadRows(int plane, int firstRow, Span<float> values)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(firstRow);
        CheckPlane(plane);
        if (values.Length % Width != 0 || values.Length / Width > Height - firstRow)
        {
            throw new ArgumentOutOfRangeException(
                nameof(values),
                values.Length,
                FormattableString.Invariant(
                    $"The buffer takes whole rows of {Width} samples, at most {Height - firstRow} of them."
                )
            );
        }

        var bytes = Scaling.BytesPerSample;
        var at = start + ((((long)plane * Height) + firstRow) * Width * bytes);
        if (Scaling is { BitsPerSample: -32, Changes: false })
        {
            ReadFloats(at, values);
            return;
        }

        var buffer = ArrayPool<byte>.Shared.Rent(ChunkBytes);
        try
        {
            while (values.Length > 0)
            {
                var samples = Math.Min(values.Length, ChunkBytes / bytes);
                var stored = buffer.AsSpan(0, samples * bytes);
                source.ReadExactly(at, stored);
                SampleDecoder.Decode(stored, Scaling, values[..samples]);
                values = values[samples..];
                at += stored.Length;
            }
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }

    /// <summary>Reads one sample exactly.</summary>
    /// <param name="plane">The plane, from 0.</param>
    /// <param name="column">The column, from 0.</param>
    /// <param name="row">The row, from 0, as stored.</param>
    /// <returns>The value.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The image has no such sample.</exception>
    /// <exception cref="UnreadableFileException">The file cannot be read any more.</exception>
    public SampleValue ReadSample(int plane, int column, int row)
    {
        CheckPlane(plane);
        ArgumentOutOfRangeException.ThrowIfNegative(column);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(column, Width);
        ArgumentOutOfRangeException.ThrowIfNegative(row);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(row, Height);
        Span<byte> stored = stackalloc byte[Scaling.BytesPerSample];
        var place = (((((long)plane * Height) + row) * Width) + column) * stored.Length;
        source.ReadExactly(start + place, stored);
        return SampleDecoder.DecodeOne(stored, Scaling);
    }

    /// <summary>Floats are read to their place and turned round there: no buffer between.</summary>
    private void ReadFloats(long at, Span<float> values)
    {
        while (values.Length > 0)
        {
            var part = values[..Math.Min(values.Length, ChunkBytes / sizeof(float))];
            source.ReadExactly(at, MemoryMarshal.AsBytes(part));
            if (BitConverter.IsLittleEndian)
            {
                var turned = MemoryMarshal.Cast<float, int>(part);
                BinaryPrimitives.ReverseEndianness(turned, turned);
            }

            values = values[part.Length..];
            at += (long)part.Length * sizeof(float);
        }
    }

    private void CheckPlane(int plane)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(plane);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(plane, Planes);
    }
}
