using System.Buffers.Binary;
using System.IO.Compression;
using Framing.Fits;

namespace Framing.Imaging;

/// <summary>What a PNG file says of itself, held against what it holds before a byte of it is decoded.</summary>
/// <param name="Width">Columns.</param>
/// <param name="Height">Rows.</param>
/// <param name="BitDepth">Bits a sample, 1 to 16.</param>
/// <param name="ColourType">0 grey, 2 colours, 3 palette, 4 grey with alpha, 6 colours with alpha.</param>
/// <param name="Interlaced">True for the seven passes.</param>
/// <param name="HasTransparency">True for a tRNS chunk.</param>
/// <param name="Data">Place and length of every IDAT chunk's bytes.</param>
/// <param name="Needed">Place and length of what the decoder gets to see: signature, header, palette, transparency, data, end.</param>
/// <remarks>Source: PNG (Third Edition), W3C Recommendation, sections 5, 8 and 11.</remarks>
internal sealed record PngLayout(
    int Width,
    int Height,
    int BitDepth,
    int ColourType,
    bool Interlaced,
    bool HasTransparency,
    IReadOnlyList<(long Start, long Length)> Data,
    IReadOnlyList<(long Start, long Length)> Needed
)
{
    /// <summary>More pixels than this are not decoded: the decoder needs up to 8 bytes for each.</summary>
    public const long MostPixels = 120_000_000;

    /// <summary>No deflate stream grows by more than this (zlib's own technical note: 1032 to 1).</summary>
    private const long MostGrowth = 1032;

    public static ReadOnlySpan<byte> Signature => [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    public bool HasAlpha => ColourType is 4 or 6 || HasTransparency;

    public int Planes => ColourType is 0 or 4 ? 1 : 3;

    /// <summary>Bytes of the unpacked rows of all passes, a filter byte before each row.</summary>
    public long UnpackedBytes
    {
        get
        {
            if (!Interlaced)
            {
                return RowBytes(Width) * Height;
            }

            long bytes = 0;
            foreach (var (x, y, dx, dy) in Passes)
            {
                var columns = (Width - x + dx - 1) / dx;
                bytes += columns > 0 ? RowBytes(columns) * ((Height - y + dy - 1) / dy) : 0;
            }

            return bytes;
        }
    }

    /// <summary>First column and row, and steps, of the seven passes (section 8.2 of the specification).</summary>
    private static ReadOnlySpan<(int X, int Y, int Dx, int Dy)> Passes =>
        new[]
        {
            (0, 0, 8, 8),
            (4, 0, 8, 8),
            (0, 4, 4, 8),
            (2, 0, 4, 4),
            (0, 2, 2, 4),
            (1, 0, 2, 2),
            (0, 1, 1, 2),
        };

    /// <summary>Walks through the chunks of a file.</summary>
    public static PngLayout Read(string name, Stream stream)
    {
        Span<byte> header = stackalloc byte[33];
        stream.Position = 0;
        if (stream.ReadAtLeast(header, header.Length, throwOnEndOfStream: false) < header.Length)
        {
            throw Truncated(name, stream.Length);
        }

        if (
            !header[12..16].SequenceEqual("IHDR"u8)
            || BinaryPrimitives.ReadUInt32BigEndian(header[8..]) != 13
        )
        {
            throw new UnreadableFileException(
                name,
                "first chunk",
                "it is not IHDR of 13 bytes",
                "a PNG begins with its header; save the picture again"
            );
        }

        var width = BinaryPrimitives.ReadUInt32BigEndian(header[16..]);
        var height = BinaryPrimitives.ReadUInt32BigEndian(header[20..]);
        CheckSize(name, width, height);
        CheckKind(name, header[24], header[25], header[28]);
        var transparency = false;
        var data = new List<(long, long)>();
        // A header that is longer for the decoder than here once made it loop for ever: it sees no chunk but these.
        var needed = new List<(long, long)> { (0, header.Length) };
        var ended = false;
        Span<byte> chunk = stackalloc byte[8];
        for (long at = header.Length; !ended; )
        {
            stream.Position = at;
            if (stream.ReadAtLeast(chunk, chunk.Length, throwOnEndOfStream: false) < chunk.Length)
            {
                throw Truncated(name, stream.Length);
            }

            var length = BinaryPrimitives.ReadUInt32BigEndian(chunk);
            if (length > int.MaxValue || at + 12 + length > stream.Length)
            {
                throw Truncated(name, stream.Length);
            }

            var type = chunk[4..];
            transparency |= type.SequenceEqual("tRNS"u8);
            ended = type.SequenceEqual("IEND"u8);
            if (type.SequenceEqual("IDAT"u8))
            {
                data.Add((at + 8, length));
            }

            if (
                ended
                || type.SequenceEqual("IDAT"u8)
                || type.SequenceEqual("PLTE"u8)
                || type.SequenceEqual("tRNS"u8)
            )
            {
                needed.Add((at, length + 12));
            }

            at += 12 + length;
        }

        var layout = new PngLayout(
            (int)width,
            (int)height,
            header[24],
            header[25],
            header[28] == 1,
            transparency,
            data,
            needed
        );
        layout.CheckLength(name);
        return layout;
    }

    /// <summary>Unpacks the picture's data without keeping them, and refuses a file that holds fewer than it says.</summary>
    public void CheckUnpacked(string name, Stream stream)
    {
        using var packed = new FileRanges(stream, Data);
        using var unpacked = new ZLibStream(packed, CompressionMode.Decompress);
        var buffer = new byte[64 * 1024];
        long count = 0;
        int read;
        try
        {
            while (count < UnpackedBytes && (read = unpacked.Read(buffer)) > 0)
            {
                count += read;
            }
        }
        catch (InvalidDataException problem)
        {
            throw new UnreadableFileException(
                name,
                "picture data",
                "they are damaged",
                "save the picture again",
                problem
            );
        }

        if (count < UnpackedBytes)
        {
            throw new UnreadableFileException(
                name,
                "picture data",
                FormattableString.Invariant(
                    $"the file is truncated: {count} of {UnpackedBytes} bytes are there"
                ),
                "copy it again"
            );
        }
    }

    private long RowBytes(int columns)
    {
        var samples = ColourType switch
        {
            2 => 3,
            4 => 2,
            6 => 4,
            _ => 1,
        };
        return 1 + ((((long)columns * samples * BitDepth) + 7) / 8);
    }

    private static void CheckSize(string name, uint width, uint height)
    {
        if (width == 0 || height == 0 || (ulong)width * height > MostPixels)
        {
            throw new UnreadableFileException(
                name,
                "size",
                FormattableString.Invariant($"{width} x {height} pixels"),
                FormattableString.Invariant(
                    $"a PNG of 1 to {MostPixels / 1_000_000} million pixels is read; save it smaller, or as FITS"
                )
            );
        }
    }

    private static void CheckKind(string name, byte depth, byte colour, byte interlace)
    {
        var known = colour switch
        {
            0 => depth is 1 or 2 or 4 or 8 or 16,
            3 => depth is 1 or 2 or 4 or 8,
            2 or 4 or 6 => depth is 8 or 16,
            _ => false,
        };
        if (!known || interlace > 1)
        {
            throw new UnreadableFileException(
                name,
                "header",
                FormattableString.Invariant(
                    $"colour type {colour} with {depth} bits and interlace {interlace}"
                ),
                "there is no such PNG; save the picture again"
            );
        }
    }

    private void CheckLength(string name)
    {
        long packed = 0;
        foreach (var (_, length) in Data)
        {
            packed += length;
        }

        if (packed * MostGrowth < UnpackedBytes)
        {
            throw new UnreadableFileException(
                name,
                "picture data",
                FormattableString.Invariant(
                    $"{packed} bytes cannot hold the {Width} x {Height} pixels of the header"
                ),
                "the file is damaged; save or copy it again"
            );
        }
    }

    private static UnreadableFileException Truncated(string name, long length) =>
        new(
            name,
            "file",
            FormattableString.Invariant($"the PNG is truncated after {length} bytes"),
            "copy it again"
        );
}
