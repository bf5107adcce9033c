namespace Framing.Fits;

/// <summary>What the header of a compressed image says: its shape, its tiles, and how they are packed.</summary>
/// <remarks>Source: FITS Standard 4.0, section 10.1 and 10.2.</remarks>
internal sealed record TileLayout
{
    /// <summary>A row of tiles that is held unpacked has at most this many samples.</summary>
    private const long MostHeld = 1L << 27;

    public required string Packing { get; init; }

    public required int BitsPerSample { get; init; }

    public required long[] Axes { get; init; }

    public required long[] Tile { get; init; }

    public required int RiceBytes { get; init; }

    public required int RiceBlock { get; init; }

    public required DitherKind Dithering { get; init; }

    public required long Seed { get; init; }

    public required int? Blank { get; init; }

    public required double? Scale { get; init; }

    public required double? Zero { get; init; }

    public bool IsReal => BitsPerSample < 0;

    public int BytesPerSample => Math.Abs(BitsPerSample) / 8;

    /// <summary>Tiles along the first axes of a picture: across, down, and through the planes.</summary>
    public long TilesAlong(int axis) =>
        axis < Axes.Length ? (Axes[axis] + Tile[axis] - 1) / Tile[axis] : 1;

    /// <summary>Length of an axis; 1 beyond the last.</summary>
    public long Along(int axis) => axis < Axes.Length ? Axes[axis] : 1;

    /// <summary>Length of a whole tile along an axis; 1 beyond the last.</summary>
    public long TileAlong(int axis) => axis < Tile.Length ? Tile[axis] : 1;

    public static TileLayout Read(string name, FitsHeader header)
    {
        var packing = header.Text("ZCMPTYPE")?.Trim() ?? string.Empty;
        if (packing is not ("RICE_1" or "RICE_ONE" or "GZIP_1" or "GZIP_2" or "NOCOMPRESS"))
        {
            throw Wrong(
                name,
                "ZCMPTYPE",
                header,
                "tiles packed with RICE_1, GZIP_1 or GZIP_2 are read; save it again with one of these or unpacked"
            );
        }

        var count = Whole(name, header, "ZNAXIS", 1, 999);
        var axes = new long[count];
        var tile = new long[count];
        for (var i = 0; i < axes.Length; i++)
        {
            axes[i] = Whole(name, header, FitsHeader.Numbered("ZNAXIS", i + 1), 0, long.MaxValue);
            var keyword = FitsHeader.Numbered("ZTILE", i + 1);
            tile[i] =
                header.Has(keyword) ? Whole(name, header, keyword, 1, long.MaxValue)
                : i == 0 ? Math.Max(1, axes[0])
                : 1;
            tile[i] = Math.Max(1, Math.Min(tile[i], axes[i]));
            if (i > 2 && tile[i] > 1)
            {
                throw Wrong(name, keyword, header, "tiles reach over three axes at most");
            }
        }

        var bits = (int)Whole(name, header, "ZBITPIX", -64, 64);
        if (bits is not (8 or 16 or 32 or 64 or -32 or -64))
        {
            throw Wrong(name, "ZBITPIX", header, "it is one of 8, 16, 32, 64, -32, -64");
        }

        var layout = new TileLayout
        {
            Packing = packing == "RICE_ONE" ? "RICE_1" : packing,
            BitsPerSample = bits,
            Axes = axes,
            Tile = tile,
            RiceBytes = (int)Parameter(header, "BYTEPIX", bits is 8 or 16 ? bits / 8 : 4),
            RiceBlock = (int)Parameter(header, "BLOCKSIZE", 32),
            Dithering = header.Text("ZQUANTIZ")?.Trim() switch
            {
                "SUBTRACTIVE_DITHER_1" => DitherKind.Subtractive,
                "SUBTRACTIVE_DITHER_2" => DitherKind.SubtractiveWithZeros,
                _ => DitherKind.None,
            },
            Seed = header.Integer("ZDITHER0") is { } seed and > 0 and <= Dither.Count ? seed : 1,
            Blank =
                (header.Integer("ZBLANK") ?? header.Integer("BLANK")) is { } blank
                && blank is >= int.MinValue and <= int.MaxValue
                    ? (int)blank
                    : null,
            Scale = header.Number("ZSCALE"),
            Zero = header.Number("ZZERO"),
        };
        return layout.Checked(name, header);
    }

    private TileLayout Checked(string name, FitsHeader header)
    {
        if (RiceBytes is not (1 or 2 or 4) || RiceBlock is < 1 or > 1024)
        {
            throw Wrong(
                name,
                "ZVAL1",
                header,
                "Rice samples have 1, 2 or 4 bytes, in blocks of 1 to 1024"
            );
        }

        // One row of tiles is held at a time, from edge to edge.
        return (Int128)Along(0) * TileAlong(1) * TileAlong(2) <= MostHeld
            ? this
            : throw new UnreadableFileException(
                name,
                "ZTILEn",
                $"= {string.Join(" x ", Tile)}",
                "a row of tiles has at most 134 million samples; save it again in smaller tiles"
            );
    }

    private static long Parameter(FitsHeader header, string name, long otherwise)
    {
        for (var i = 1; header.Text(FitsHeader.Numbered("ZNAME", i)) is { } found; i++)
        {
            if (found.Trim() == name)
            {
                return Math.Clamp(
                    header.Integer(FitsHeader.Numbered("ZVAL", i)) ?? otherwise,
                    -1,
                    1_000_000
                );
            }
        }

        return otherwise;
    }

    private static long Whole(
        string name,
        FitsHeader header,
        string keyword,
        long least,
        long most
    ) =>
        header.Integer(keyword) is { } number && number >= least && number <= most
            ? number
            : throw Wrong(
                name,
                keyword,
                header,
                FormattableString.Invariant($"it is a whole number from {least} to {most}")
            );

    private static UnreadableFileException Wrong(
        string name,
        string keyword,
        FitsHeader header,
        string expected
    ) => UnitReader.Wrong(name, keyword, header, expected);
}
