using System.Buffers;

namespace Framing.Fits;

/// <summary>Samples whose colours stand side by side, as if they stood plane after plane.</summary>
internal sealed class InterleavedBytes : ByteSource
{
    private const int ChunkBytes = 192 * 1024;

    private readonly ByteSource source;
    private readonly long start;
    private readonly long pixels;
    private readonly int colours;
    private readonly int size;

    /// <summary>Looks at samples in another order.</summary>
    /// <param name="source">Where they are.</param>
    /// <param name="start">Where they start.</param>
    /// <param name="pixels">Pixels of the picture.</param>
    /// <param name="colours">Samples of a pixel.</param>
    /// <param name="size">Bytes of a sample.</param>
    public InterleavedBytes(ByteSource source, long start, long pixels, int colours, int size)
        : base(source.Name)
    {
        this.source = source;
        this.start = start;
        this.pixels = pixels;
        this.colours = colours;
        this.size = size;
        Length = pixels * colours * size;
    }

    public override long Length { get; }

    public override void ReadExactly(long offset, Span<byte> buffer)
    {
        var step = colours * size;
        var rented = ArrayPool<byte>.Shared.Rent(ChunkBytes);
        try
        {
            while (buffer.Length > 0)
            {
                // Whole samples are asked for, as images are read.
                var (plane, pixel) = Math.DivRem(offset / size, pixels);
                var count = (int)
                    Math.Min(Math.Min(buffer.Length / size, ChunkBytes / step), pixels - pixel);
                var from = rented.AsSpan(0, count * step);
                source.ReadExactly(start + (pixel * step), from);
                for (var i = 0; i < count; i++)
                {
                    from.Slice((i * step) + ((int)plane * size), size).CopyTo(buffer[(i * size)..]);
                }

                buffer = buffer[(count * size)..];
                offset += count * size;
            }
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(rented);
        }
    }

    public override void Dispose() => source.Dispose();
}
