using System.Buffers;
using System.Buffers.Binary;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Text;

namespace Framing.Fits;

/// <summary>Writes FITS files: a header alone, or one image as the primary array.</summary>
/// <remarks>Files are written whole beside their place and then renamed. Source: FITS Standard 4.0.</remarks>
public static class FitsWriter
{
    private const int Block = 2880;

    /// <summary>Writes an image.</summary>
    /// <typeparam name="T">
    /// What a sample is: byte, sbyte, short, ushort, int, uint, long, ulong, float or double. Types that FITS does not
    /// store as they are get the BZERO of the standard (table 11).
    /// </typeparam>
    /// <param name="path">Where the file shall stand.</param>
    /// <param name="width">Samples along the first axis, 1 or more.</param>
    /// <param name="height">Rows, 1 or more.</param>
    /// <param name="planes">Planes, 1 or more; one plane is written with two axes.</param>
    /// <param name="samples">The samples, row after row, plane after plane; the first row is y = 1.</param>
    /// <param name="cards">Further cards, or null.</param>
    /// <exception cref="ArgumentException">The shape does not fit the samples.</exception>
    /// <exception cref="NotSupportedException">The type is none of the above.</exception>
    /// <exception cref="IOException">The file cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be written.</exception>
    public static void WriteImage<T>(
        string path,
        int width,
        int height,
        int planes,
        ReadOnlyMemory<T> samples,
        FitsHeaderBuilder? cards = null
    )
        where T : unmanaged
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(height, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(planes, 1);
        if ((Int128)width * height * planes != samples.Length)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"{samples.Length} samples do not fill {width} x {height} x {planes}."
                ),
                nameof(samples)
            );
        }

        var header = ImageHeader<T>(width, height, planes);
        WholeFile.Write(
            path,
            stream =>
            {
                WriteCards(stream, [.. header.Images, .. Further(cards)]);
                WriteSamples(stream, samples.Span);
            }
        );
    }

    /// <summary>Writes a file that holds a header and no data.</summary>
    /// <param name="path">Where the file shall stand.</param>
    /// <param name="cards">The cards beside those that say there are no data.</param>
    /// <exception cref="IOException">The file cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be written.</exception>
    public static void WriteHeader(string path, FitsHeaderBuilder cards)
    {
        ArgumentNullException.ThrowIfNull(cards);
        var header = new FitsHeaderBuilder()
            .Add("SIMPLE", true, "FITS Standard 4.0")
            .Add("BITPIX", 8)
            .Add("NAXIS", 0, "a header without data");
        WholeFile.Write(path, stream => WriteCards(stream, [.. header.Images, .. Further(cards)]));
    }

    /// <summary>The further cards; where a text runs on over CONTINUE cards, the card that older readers want says so.</summary>
    private static IEnumerable<string> Further(FitsHeaderBuilder? cards)
    {
        var images = cards?.Images ?? [];
        return images.Any(image => image.StartsWith("CONTINUE", StringComparison.Ordinal))
            ? new FitsHeaderBuilder()
                .Add("LONGSTRN", "OGIP 1.0", "long texts run on over CONTINUE cards")
                .Images.Concat(images)
            : images;
    }

    private static FitsHeaderBuilder ImageHeader<T>(int width, int height, int planes)
    {
        var (bits, zero) = Form<T>();
        var header = new FitsHeaderBuilder()
            .Add("SIMPLE", true, "FITS Standard 4.0")
            .Add("BITPIX", bits)
            .Add("NAXIS", planes > 1 ? 3 : 2)
            .Add("NAXIS1", width)
            .Add("NAXIS2", height);
        if (planes > 1)
        {
            header.Add("NAXIS3", planes);
        }

        if (zero is not null)
        {
            header.Add("BSCALE", 1L).AddFixed("BZERO", zero, "samples are stored minus this");
        }

        return header;
    }

    private static (int Bits, string? Zero) Form<T>() =>
        default(T) switch
        {
            byte => (8, null),
            sbyte => (8, "-128"),
            short => (16, null),
            ushort => (16, "32768"),
            int => (32, null),
            uint => (32, "2147483648"),
            long => (64, null),
            ulong => (64, "9223372036854775808"),
            float => (-32, null),
            double => (-64, null),
            _ => throw new NotSupportedException(
                $"FITS stores no samples of the type {typeof(T).Name}."
            ),
        };

    private static void WriteCards(Stream stream, IEnumerable<string> images)
    {
        var bytes = 0;
        foreach (var image in images.Append("END".PadRight(FitsCard.Length)))
        {
            stream.Write(Encoding.ASCII.GetBytes(image));
            bytes += FitsCard.Length;
        }

        Fill(stream, bytes, (byte)' ');
    }

    private static void WriteSamples<T>(Stream stream, ReadOnlySpan<T> samples)
        where T : unmanaged
    {
        var size = Unsafe.SizeOf<T>();
        var buffer = ArrayPool<byte>.Shared.Rent(256 * 1024);
        try
        {
            var step = buffer.Length / size;
            for (var at = 0; at < samples.Length; at += step)
            {
                var part = samples.Slice(at, Math.Min(step, samples.Length - at));
                var bytes = buffer.AsSpan(0, part.Length * size);
                MemoryMarshal.AsBytes(part).CopyTo(bytes);
                ToStored<T>(bytes);
                stream.Write(bytes);
            }

            Fill(stream, (long)samples.Length * size, 0);
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }

    /// <summary>Takes the offset away (which flips the highest bit) and turns the bytes round.</summary>
    private static void ToStored<T>(Span<byte> bytes)
    {
        switch (default(T))
        {
            case sbyte:
                foreach (ref var sample in bytes)
                {
                    sample ^= 0x80;
                }

                break;
            case ushort:
                foreach (ref var sample in MemoryMarshal.Cast<byte, ushort>(bytes))
                {
                    sample ^= 0x8000;
                }

                break;
            case uint:
                foreach (ref var sample in MemoryMarshal.Cast<byte, uint>(bytes))
                {
                    sample ^= 0x8000_0000;
                }

                break;
            case ulong:
                foreach (ref var sample in MemoryMarshal.Cast<byte, ulong>(bytes))
                {
                    sample ^= 0x8000_0000_0000_0000;
                }

                break;
            default:
                break;
        }

        if (BitConverter.IsLittleEndian)
        {
            Turn(bytes, Unsafe.SizeOf<T>());
        }
    }

    private static void Turn(Span<byte> bytes, int size)
    {
        switch (size)
        {
            case 2:
                var shorts = MemoryMarshal.Cast<byte, ushort>(bytes);
                BinaryPrimitives.ReverseEndianness(shorts, shorts);
                break;
            case 4:
                var ints = MemoryMarshal.Cast<byte, uint>(bytes);
                BinaryPrimitives.ReverseEndianness(ints, ints);
                break;
            case 8:
                var longs = MemoryMarshal.Cast<byte, ulong>(bytes);
                BinaryPrimitives.ReverseEndianness(longs, longs);
                break;
            default:
                break;
        }
    }

    private static void Fill(Stream stream, long written, byte with)
    {
        Span<byte> fill = stackalloc byte[Block];
        fill.Fill(with);
        stream.Write(fill[..(int)((Block - (written % Block)) % Block)]);
    }
}
