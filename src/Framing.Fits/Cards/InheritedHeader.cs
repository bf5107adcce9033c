namespace Framing.Fits;

/// <summary>A header that takes over what the primary header says, where it asks for that.</summary>
/// <remarks>Source: FITS Standard 4.0, section 4.4.2.6 (INHERIT).</remarks>
internal static class InheritedHeader
{
    private static readonly HashSet<string> OfTheUnit = new(StringComparer.Ordinal)
    {
        "SIMPLE",
        "XTENSION",
        "BITPIX",
        "NAXIS",
        "EXTEND",
        "PCOUNT",
        "GCOUNT",
        "GROUPS",
        "BLOCKED",
        "BSCALE",
        "BZERO",
        "BLANK",
        "BUNIT",
        "DATAMIN",
        "DATAMAX",
        "EXTNAME",
        "EXTVER",
        "EXTLEVEL",
        "INHERIT",
        "CHECKSUM",
        "DATASUM",
        "LONGSTRN",
        "CONTINUE",
        "COMMENT",
        "HISTORY",
        "",
    };

    /// <summary>The header itself, or with INHERIT = T one that holds the primary header's keywords behind its own.</summary>
    /// <param name="header">The header of an extension, or the primary one.</param>
    /// <param name="primary">The primary header.</param>
    public static FitsHeader Of(FitsHeader header, FitsHeader primary)
    {
        if (ReferenceEquals(header, primary) || header.Logical("INHERIT") != true)
        {
            return header;
        }

        var cards = header.Cards.ToList();
        var takes = false;
        foreach (var card in primary.Cards)
        {
            // A long text comes with the cards it runs on over.
            takes =
                card.Keyword == "CONTINUE"
                    ? takes
                    : !OfTheUnit.Contains(card.Keyword)
                        && SolutionKeywords.Axis(card.Keyword, "NAXIS") is null
                        && !header.Has(card.Keyword);
            if (takes)
            {
                cards.Add(card);
            }
        }

        // What is odd about the cards is told by the headers they come from.
        return new(cards, []);
    }
}
