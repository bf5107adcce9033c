namespace Framing.Fits;

/// <summary>The header of a compressed image as it would be of the plain one: the table's own cards left out.</summary>
internal static class PlainHeader
{
    private static readonly HashSet<string> OfTheTable = new(StringComparer.Ordinal)
    {
        "XTENSION",
        "BITPIX",
        "NAXIS",
        "NAXIS1",
        "NAXIS2",
        "PCOUNT",
        "GCOUNT",
        "TFIELDS",
        "THEAP",
        "ZIMAGE",
        "ZCMPTYPE",
        "ZBITPIX",
        "ZNAXIS",
        "ZQUANTIZ",
        "ZDITHER0",
        "ZBLANK",
        "ZSCALE",
        "ZZERO",
        "ZSIMPLE",
        "ZTENSION",
        "ZEXTEND",
        "ZBLOCKED",
        "ZPCOUNT",
        "ZGCOUNT",
        "ZHECKSUM",
        "ZDATASUM",
        "ZMASKCMP",
        "CHECKSUM",
        "DATASUM",
    };

    private static readonly string[] Numbered =
    [
        "TTYPE",
        "TFORM",
        "TUNIT",
        "TDIM",
        "TNULL",
        "TSCAL",
        "TZERO",
        "TDISP",
        "ZNAXIS",
        "ZTILE",
        "ZNAME",
        "ZVAL",
    ];

    /// <summary>Makes the header.</summary>
    /// <param name="header">The header of the table.</param>
    /// <param name="layout">What it says of the image.</param>
    public static FitsHeader Of(FitsHeader header, TileLayout layout)
    {
        var shape = new FitsHeaderBuilder()
            .Add("BITPIX", layout.BitsPerSample)
            .Add("NAXIS", layout.Axes.Length);
        for (var i = 0; i < layout.Axes.Length; i++)
        {
            shape.Add(FitsHeader.Numbered("NAXIS", i + 1), layout.Axes[i]);
        }

        return new(
            [
                .. shape.ToHeader().Cards,
                .. header.Cards.Where(card =>
                    !OfTheTable.Contains(card.Keyword)
                    && !Array.Exists(
                        Numbered,
                        name => SolutionKeywords.Axis(card.Keyword, name) is not null
                    )
                ),
            ],
            []
        );
    }
}
