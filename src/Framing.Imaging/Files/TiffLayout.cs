using Framing.Fits;

namespace Framing.Imaging;

/// <summary>What a TIFF file says of its first picture, held against the file before a byte of it is decoded.</summary>
/// <remarks>Source: TIFF 6.0, sections 8, 14, 15, 18 and 19; the tags' numbers are the document's.</remarks>
internal sealed record TiffLayout
{
    /// <summary>More bytes than this are not unpacked; PNG's decoder is held to as many.</summary>
    private const long MostUnpacked = 8 * PngLayout.MostPixels;

    /// <summary>Longer files need wide offsets, which the library is not given.</summary>
    private const long MostBytes = 4_000_000_000;

    /// <summary>Rows of tiles are held whole.</summary>
    private const long MostBand = 200_000_000;

    public required TagDirectory Tags { get; init; }

    public required int Width { get; init; }

    public required int Height { get; init; }

    /// <summary>Bits a sample as stored: 1, 2, 4, 8, 16, 32 or 64.</summary>
    public required int Bits { get; init; }

    /// <summary>1 whole numbers of 0 or more, 2 signed ones, 3 IEEE numbers.</summary>
    public required int Kind { get; init; }

    /// <summary>Samples a pixel as stored, whatever they are.</summary>
    public required int Samples { get; init; }

    /// <summary>0 white is zero, 1 black is zero, 2 colours, 3 palette.</summary>
    public required int Photometric { get; init; }

    /// <summary>True when each plane is stored by itself.</summary>
    public required bool Planar { get; init; }

    /// <summary>Columns of a tile; 0 for strips.</summary>
    public required int TileWidth { get; init; }

    /// <summary>Rows of a tile or a strip.</summary>
    public required int TileHeight { get; init; }

    /// <summary>The sample that is transparency, from 0; -1 for none.</summary>
    public required int Alpha { get; init; }

    /// <summary>Red, then green, then blue numbers of 0 to 65535, where there is a palette.</summary>
    public required long[] Palette { get; init; }

    /// <summary>Where each strip or tile begins, plane after plane.</summary>
    public long[] Starts { get; private set; } = [];

    /// <summary>Bytes of each strip or tile.</summary>
    public long[] Lengths { get; private set; } = [];

    /// <summary>Planes shown: 1 grey, 3 colours.</summary>
    public int Planes => Photometric >= 2 ? 3 : 1;

    public bool Tiled => TileWidth > 0;

    public static bool Begins(ReadOnlySpan<byte> start) =>
        start.StartsWith("II*\0"u8)
        || start.StartsWith("MM\0*"u8)
        || start.StartsWith("II+\0"u8)
        || start.StartsWith("MM\0+"u8);

    public static TiffLayout Read(string name, Stream stream)
    {
        var tags = TagDirectory.Read(name, stream, strict: true);
        var bits = tags.Numbers(258);
        var kinds = tags.Numbers(339);
        var tiled = tags.Has(322);
        var samples = tags.Number(277) ?? 1;
        var photometric = tags.Number(262) ?? -1;
        var (width, height) = (tags.Number(256) ?? 0, tags.Number(257) ?? 0);
        if (width < 1 || height < 1 || (double)width * height > PngLayout.MostPixels)
        {
            throw new UnreadableFileException(
                name,
                "size",
                FormattableString.Invariant($"{width} x {height} pixels"),
                FormattableString.Invariant(
                    $"1 to {PngLayout.MostPixels / 1_000_000} million pixels are read"
                )
            );
        }

        if (stream.Length > MostBytes)
        {
            throw new UnreadableFileException(
                name,
                "file",
                FormattableString.Invariant($"{stream.Length} bytes"),
                FormattableString.Invariant($"a TIFF of at most {MostBytes} bytes is read")
            );
        }

        var layout = new TiffLayout
        {
            Tags = tags,
            Width = (int)width,
            Height = (int)height,
            Bits = bits.Length == 0 ? 1 : (int)Math.Min(bits[0], 1000),
            Kind = kinds.Length == 0 || kinds[0] == 4 ? 1 : (int)Math.Min(kinds[0], 1000),
            Samples = (int)Math.Clamp(samples, 0, 1000),
            Photometric = (int)Math.Clamp(photometric, -1, 100_000),
            Planar = tags.Number(284) == 2 && samples > 1,
            TileWidth = tiled ? (int)Math.Clamp(tags.Number(322) ?? 0, -1, int.MaxValue) : 0,
            TileHeight = (int)
                Math.Clamp(
                    tiled ? tags.Number(323) ?? 0 : Math.Min(tags.Number(278) ?? height, height),
                    0,
                    int.MaxValue
                ),
            Alpha = AlphaOf(tags, samples, photometric),
            Palette = photometric == 3 ? tags.Numbers(320) : [],
        };
        layout.CheckKind(
            name,
            bits.Any(one => one != bits[0]) || kinds.Any(one => one != kinds[0])
        );
        layout.CheckData(name, stream.Length);
        return layout;
    }

    private static int AlphaOf(TagDirectory tags, long samples, long photometric)
    {
        var extra = tags.Numbers(338);
        var found = Array.FindIndex(extra, kind => kind is 1 or 2);
        var at = found + (photometric == 2 ? 3 : 1);
        return found >= 0 && at < samples ? at : -1;
    }

    private static UnreadableFileException Refuse(
        string name,
        string where,
        string found,
        string right
    ) => new(name, where, found, right);

    private void CheckKind(string name, bool mixed)
    {
        const string save = "save it as grey or RGB TIFF, or as FITS";
        if (Photometric is < 0 or > 3)
        {
            throw Refuse(
                name,
                "TIFF colours (tag 262)",
                Photometric switch
                {
                    -1 => "missing",
                    5 => "inks (CMYK)",
                    6 => "YCbCr",
                    8 => "CIE L*a*b*",
                    32803 => "a camera's raw pattern",
                    34892 => "a camera's raw data",
                    _ => FormattableString.Invariant($"kind {Photometric}"),
                },
                save
            );
        }

        if (
            mixed
            || (Kind, Bits)
                is not (

                    (1, 1 or 2 or 4 or 8 or 16 or 32)
                    or
                    (2, 8 or 16 or 32)
                    or
                    (3, 16 or 32 or 64)
                )
            || (Photometric == 3 && (Kind != 1 || Bits > 16 || Palette.Length != 3 << Bits))
        )
        {
            throw Refuse(
                name,
                "TIFF samples (tags 258, 339)",
                FormattableString.Invariant(
                    $"{Bits} bits of kind {Kind}{(mixed ? ", not the same in all planes" : string.Empty)}{(Photometric == 3 ? FormattableString.Invariant($", palette of {Palette.Length} numbers") : string.Empty)}"
                ),
                "whole numbers of up to 32 bits and IEEE numbers are read; save it so"
            );
        }

        if (Samples < (Photometric == 2 ? 3 : 1) || Samples > 16 || (Bits < 8 && Samples > 1))
        {
            throw Refuse(
                name,
                "TIFF samples a pixel (tag 277)",
                FormattableString.Invariant($"{Samples} of {Bits} bits"),
                save
            );
        }

        if (Compression is not (1 or 5 or 8 or 32773 or 32946))
        {
            throw Refuse(
                name,
                "TIFF compression (tag 259)",
                Compression switch
                {
                    2 or 3 or 4 => "fax",
                    6 or 7 => "JPEG",
                    34712 => "JPEG 2000",
                    50000 => "Zstandard",
                    _ => FormattableString.Invariant($"kind {Compression}"),
                },
                "none, LZW, Deflate and PackBits are read; save it so"
            );
        }

        if (
            Predictor is not (1 or 2 or 3)
            || (Predictor == 2 && Bits > 32)
            || (Predictor > 1 && Bits < 8)
        )
        {
            throw Refuse(
                name,
                "TIFF predictor (tag 317)",
                FormattableString.Invariant($"kind {Predictor} for {Bits} bits"),
                "save it without one"
            );
        }
    }

    public long Compression => Tags.Number(259) ?? 1;

    public long Predictor => Compression is 5 or 8 or 32946 ? Tags.Number(317) ?? 1 : 1;

    /// <summary>Bytes that one byte can unpack to: TIFF 6.0 for LZW and PackBits, zlib's technical note for Deflate.</summary>
    private long MostGrowth =>
        Compression switch
        {
            1 => 1,
            32773 => 64,
            5 => 2700,
            _ => 1032,
        };

    private void CheckData(string name, long length)
    {
        var together = Planar ? 1 : Samples;
        if (TileHeight < 1 || TileWidth < 0)
        {
            throw Refuse(
                name,
                "TIFF strips",
                FormattableString.Invariant($"{TileHeight} rows high"),
                "the file is damaged; save it again"
            );
        }

        var (wide, high) = Tiled ? (TileWidth, TileHeight) : (Width, Math.Min(TileHeight, Height));
        var across = ((long)Width + wide - 1) / wide;
        var down = ((long)Height + high - 1) / high;
        var rowBytes = ((double)wide * together * Bits + 7) / 8;
        var unpacked = Math.Floor(rowBytes) * high * across * down * (Planar ? Samples : 1);
        if (unpacked > MostUnpacked || (Tiled && rowBytes * high * across > MostBand))
        {
            throw Refuse(
                name,
                "size",
                FormattableString.Invariant(
                    $"{unpacked:0} bytes of samples in tiles or strips of {wide} x {high}"
                ),
                FormattableString.Invariant(
                    $"at most {MostUnpacked} bytes, and {MostBand} in a row of tiles, are read; save it smaller"
                )
            );
        }

        var count = across * down * (Planar ? Samples : 1);
        var starts = Tags.Numbers(Tiled ? 324 : 273);
        var lengths = Tags.Numbers(Tiled ? 325 : 279);
        if (starts.Length < count || lengths.Length < count)
        {
            throw Refuse(
                name,
                Tiled ? "TIFF tiles" : "TIFF strips",
                FormattableString.Invariant(
                    $"{count} are needed, {Math.Min(starts.Length, lengths.Length)} are there"
                ),
                "the file is damaged; save it again"
            );
        }

        Starts = starts[..(int)count];
        Lengths = lengths[..(int)count];
        for (var i = 0; i < count; i++)
        {
            var last = !Tiled && i % down == down - 1 ? Height - ((down - 1) * high) : high;
            if (
                starts[i] < 8
                || lengths[i] < 1
                || starts[i] > length - lengths[i]
                || lengths[i] * (double)MostGrowth < Math.Floor(rowBytes) * last
            )
            {
                throw Refuse(
                    name,
                    "picture data",
                    FormattableString.Invariant(
                        $"part {i + 1} of {count}: {lengths[i]} bytes at byte {starts[i]} of {length}"
                    ),
                    "the file is cut short or damaged; copy it again from where it came"
                );
            }
        }
    }
}
