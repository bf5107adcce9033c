namespace Framing.Workshop;

/// <summary>Writes the letters of European languages in small ASCII letters.</summary>
/// <remarks>The program carries no tables of languages (invariant globalization), so the letters stand here.</remarks>
internal static class AsciiLetters
{
    // Each row: what is written, then the letters that are written so.
    private static readonly Dictionary<char, string> Letters = Table(
        "a àáâãåāăąǎ",
        "ae äæ",
        "c çćĉċč",
        "d ďđð",
        "e èéêëēĕėęě",
        "g ĝğġģ",
        "h ĥħ",
        "i ìíîïĩīĭįıǐ",
        "ij ĳ",
        "j ĵ",
        "k ķĸ",
        "l ĺļľŀł",
        "n ñńņňŉŋ",
        "o òóôõōŏőøǒ",
        "oe öœ",
        "r ŕŗř",
        "s śŝşšșſ",
        "ss ß",
        "t ţťŧț",
        "th þ",
        "u ùúûũūŭůűųǔ",
        "ue ü",
        "w ŵ",
        "y ýÿŷ",
        "z źżž",
        "alpha αά",
        "beta β",
        "gamma γ",
        "delta δ",
        "epsilon εέ",
        "zeta ζ",
        "eta ηή",
        "theta θ",
        "iota ιί",
        "kappa κ",
        "lambda λ",
        "mu μµ",
        "nu ν",
        "xi ξ",
        "omicron οό",
        "pi π",
        "rho ρ",
        "sigma σς",
        "tau τ",
        "upsilon υύ",
        "phi φ",
        "chi χ",
        "psi ψ",
        "omega ωώ"
    );

    /// <summary>The letter in small ASCII letters and digits; empty when it is none.</summary>
    public static string Of(char letter)
    {
        var small = char.ToLowerInvariant(letter);
        return small switch
        {
            >= 'a' and <= 'z' or >= '0' and <= '9' => small.ToString(),
            _ => Letters.GetValueOrDefault(small) ?? "",
        };
    }

    /// <summary>True for what does not part words: apostrophes, and marks that stand on the letter before.</summary>
    public static bool IsSilent(char letter) =>
        letter is '\'' or '’' or '′' or (>= '\u0300' and <= '\u036f');

    private static Dictionary<char, string> Table(params ReadOnlySpan<string> rows)
    {
        var table = new Dictionary<char, string>();
        foreach (var row in rows)
        {
            var space = row.IndexOf(' ', StringComparison.Ordinal);
            foreach (var letter in row[(space + 1)..])
            {
                table.Add(letter, row[..space]);
            }
        }

        return table;
    }
}
