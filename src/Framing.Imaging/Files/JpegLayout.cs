using System.Buffers.Binary;
using Framing.Fits;

namespace Framing.Imaging;

/// <summary>What a JPEG file says of itself, held against what it holds before a byte of it is decoded.</summary>
/// <param name="Width">Columns as stored.</param>
/// <param name="Height">Rows as stored.</param>
/// <param name="Planes">1 grey, 3 colours.</param>
/// <param name="Tags">The camera's tags, or null.</param>
/// <remarks>Source: ITU-T T.81 (JPEG), annex B; Exif 2.32, section 4.5.4.</remarks>
internal sealed record JpegLayout(int Width, int Height, int Planes, TagDirectory? Tags)
{
    /// <summary>More pixels than this are not decoded, as with PNG.</summary>
    public const long MostPixels = PngLayout.MostPixels;

    /// <summary>A progressive picture is held whole by its decoder: 6 bytes a pixel.</summary>
    public const long MostProgressivePixels = 40_000_000;

    /// <summary>Longer files are not taken into memory.</summary>
    public const long MostBytes = 250_000_000;

    /// <summary>Every block of 64 pixels needs a bit at least.</summary>
    private const long MostPixelsPerByte = 512;

    private const int MostScans = 100;

    public static ReadOnlySpan<byte> Signature => [0xFF, 0xD8, 0xFF];

    public static JpegLayout Read(string name, Stream stream)
    {
        TagDirectory? tags = null;
        JpegLayout? found = null;
        Span<byte> head = stackalloc byte[4];
        Span<byte> frame = stackalloc byte[6];
        for (long at = 2; ; )
        {
            stream.Position = at;
            if (stream.ReadAtLeast(head, 4, throwOnEndOfStream: false) < 4)
            {
                throw CutShort(name, stream.Length);
            }

            if (head[0] != 0xFF)
            {
                throw Damaged(name, FormattableString.Invariant($"no marker at byte {at}"));
            }

            if (head[1] == 0xFF)
            {
                at++;
                continue;
            }

            var length = BinaryPrimitives.ReadUInt16BigEndian(head[2..]);
            if (length < 2 || at + 2 + length > stream.Length)
            {
                throw CutShort(name, stream.Length);
            }

            switch (head[1])
            {
                case 0xDA:
                    return found is null
                        ? throw Damaged(name, "picture data before the picture's size")
                        : found with
                        {
                            Tags = tags,
                        };
                case 0xE1 when tags is null:
                    tags = Exif(name, stream, length - 2);
                    break;
                case >= 0xC0 and <= 0xCF and not (0xC4 or 0xC8 or 0xCC):
                    if (length < 8 || stream.ReadAtLeast(frame, 6, throwOnEndOfStream: false) < 6)
                    {
                        throw CutShort(name, stream.Length);
                    }

                    found = Frame(name, stream, head[1], frame);
                    break;
                default:
                    break;
            }

            at += 2 + length;
        }
    }

    private static JpegLayout Frame(
        string name,
        Stream stream,
        byte marker,
        ReadOnlySpan<byte> frame
    )
    {
        var height = BinaryPrimitives.ReadUInt16BigEndian(frame[1..]);
        var width = BinaryPrimitives.ReadUInt16BigEndian(frame[3..]);
        if (marker > 0xC2 || frame[0] != 8 || frame[5] is not (1 or 3))
        {
            throw new UnreadableFileException(
                name,
                "JPEG kind",
                FormattableString.Invariant(
                    $"frame {marker - 0xC0}, {frame[0]} bits, {frame[5]} colour components"
                ),
                "baseline and progressive JPEG of 8 bits, grey or three colours, are read; save it so, or as PNG"
            );
        }

        var pixels = (long)width * height;
        var most = marker == 0xC2 ? MostProgressivePixels : MostPixels;
        if (pixels == 0 || pixels > most || pixels > stream.Length * MostPixelsPerByte)
        {
            throw new UnreadableFileException(
                name,
                "size",
                FormattableString.Invariant($"{width} x {height} pixels in {stream.Length} bytes"),
                pixels > most
                    ? FormattableString.Invariant(
                        $"at most {most / 1_000_000} million pixels are read{(marker == 0xC2 ? " of a progressive JPEG" : string.Empty)}; save it smaller"
                    )
                    : "the file is damaged; save it again"
            );
        }

        if (marker == 0xC2)
        {
            CheckScans(name, stream);
        }

        return new(width, height, frame[5], null);
    }

    /// <summary>A progressive picture of very many scans keeps a decoder busy for long; sound ones have about ten.</summary>
    private static void CheckScans(string name, Stream stream)
    {
        var place = stream.Position;
        stream.Position = 0;
        var buffer = new byte[1 << 16];
        var (scans, marked) = (0, false);
        for (int got; (got = stream.Read(buffer)) > 0; )
        {
            foreach (var value in buffer.AsSpan(0, got))
            {
                scans += marked && value == 0xDA ? 1 : 0;
                marked = value == 0xFF;
            }
        }

        stream.Position = place;
        if (scans > MostScans)
        {
            throw new UnreadableFileException(
                name,
                "JPEG scans",
                FormattableString.Invariant($"{scans}"),
                FormattableString.Invariant($"at most {MostScans} are read; save it again")
            );
        }
    }

    private static TagDirectory? Exif(string name, Stream stream, int length)
    {
        var bytes = new byte[length];
        stream.ReadExactly(bytes);
        ReadOnlySpan<byte> mark = "Exif\0\0"u8;
        if (!bytes.AsSpan().StartsWith(mark))
        {
            return null;
        }

        try
        {
            return TagDirectory.Read(
                name,
                new MemoryStream(bytes[mark.Length..], writable: false),
                strict: false
            );
        }
        catch (UnreadableFileException)
        {
            return null;
        }
    }

    private static UnreadableFileException CutShort(string name, long length) =>
        new(
            name,
            "file",
            FormattableString.Invariant($"cut short after {length} bytes"),
            "copy it again from where it came"
        );

    private static UnreadableFileException Damaged(string name, string found) =>
        new(name, "JPEG markers", found, "the file is damaged; save it again");
}
