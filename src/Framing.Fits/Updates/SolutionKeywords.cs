namespace Framing.Fits;

/// <summary>Knows the keywords by which a header places the first two axes of its picture on the sky.</summary>
/// <remarks>
/// Only the primary description counts; keywords with a letter behind them (CTYPE1A) are other descriptions. Sources: FITS
/// Standard 4.0, section 8; the SIP convention of the FITS registry; lookup distortions of WCS Paper IV (draft).
/// </remarks>
internal static class SolutionKeywords
{
    private static readonly HashSet<string> Whole = new(StringComparer.Ordinal)
    {
        "WCSAXES",
        "WCSNAME",
        "LONPOLE",
        "LATPOLE",
        "RADESYS",
        "RADECSYS",
        "EQUINOX",
        "EPOCH",
    };

    private static readonly string[] OfAnAxis =
    [
        "CTYPE",
        "CRPIX",
        "CRVAL",
        "CDELT",
        "CROTA",
        "CUNIT",
        "CRDER",
        "CSYER",
        "CNAME",
        "CPDIS",
        "CQDIS",
        "CPERR",
        "CQERR",
        "D2IMDIS",
        "D2IMERR",
        "DP",
        "DQ",
        "D2IM",
    ];

    private static readonly string[] OfTwoNumbers = ["CD", "PC", "PV", "PS"];

    private static readonly string[] OfSip = ["A_", "B_", "AP_", "BP_"];

    /// <summary>True for a keyword of the solution: it goes when a new solution comes.</summary>
    /// <param name="keyword">The keyword.</param>
    public static bool IsPart(string keyword) =>
        Whole.Contains(keyword)
        || OfAnAxis.Any(name => Axis(keyword, name) is 1 or 2)
        || OfTwoNumbers.Any(name => IsMatrix(keyword, name))
        || OfSip.Any(name => IsSip(keyword, name));

    /// <summary>True for keywords before which WCSAXES has to stand: those of the solution and of further axes.</summary>
    /// <param name="keyword">The keyword.</param>
    public static bool IsWorldCoordinate(string keyword) =>
        IsPart(keyword)
        || OfAnAxis.Any(name => Axis(keyword, name) is not null)
        || OfTwoNumbers.Any(name => Pair(keyword, name) is not null);

    /// <summary>The axis that a keyword is about: 3 for CRPIX3; null when it is no such keyword.</summary>
    /// <param name="keyword">The keyword.</param>
    /// <param name="name">Its name without the number.</param>
    public static int? Axis(string keyword, string name) =>
        keyword.StartsWith(name, StringComparison.Ordinal)
            ? Number(keyword.AsSpan(name.Length))
            : null;

    /// <summary>The two numbers of CD1_2 or PC001002; null when it is no such keyword.</summary>
    /// <param name="keyword">The keyword.</param>
    /// <param name="name">Its name without the numbers.</param>
    public static (int First, int Second)? Pair(string keyword, string name)
    {
        if (!keyword.StartsWith(name, StringComparison.Ordinal))
        {
            return null;
        }

        var rest = keyword.AsSpan(name.Length);
        var bar = rest.IndexOf('_');
        var (first, second) =
            bar > 0 ? (Number(rest[..bar]), Number(rest[(bar + 1)..]))
            : name == "PC" && rest.Length == 6 ? (Number(rest[..3]), Number(rest[3..]))
            : default;
        return first is { } i && second is { } j ? (i, j) : null;
    }

    private static bool IsMatrix(string keyword, string name) =>
        Pair(keyword, name) is var (i, j) && (i is 1 or 2 || (name is "CD" or "PC" && j is 1 or 2));

    private static bool IsSip(string keyword, string name)
    {
        if (!keyword.StartsWith(name, StringComparison.Ordinal))
        {
            return false;
        }

        var rest = keyword.AsSpan(name.Length);
        var bar = rest.IndexOf('_');
        return rest is "ORDER" or "DMAX"
            || (
                bar > 0 && Number(rest[..bar]) is not null && Number(rest[(bar + 1)..]) is not null
            );
    }

    private static int? Number(ReadOnlySpan<char> text)
    {
        // Record-valued cards carry a field behind their number: DP1.AXIS.1.
        var dot = text.IndexOf('.');
        text = dot < 0 ? text : text[..dot];
        if (text.Length is 0 or > 3)
        {
            return null;
        }

        var number = 0;
        foreach (var digit in text)
        {
            if (!char.IsAsciiDigit(digit))
            {
                return null;
            }

            number = (number * 10) + (digit - '0');
        }

        return number;
    }
}
