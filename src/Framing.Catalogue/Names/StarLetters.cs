namespace Framing.Catalogue;

/// <summary>Letters and numbers of stars inside a constellation, as search keys write them.</summary>
internal static class StarLetters
{
    private static readonly string[] Greek =
    [
        "alpha",
        "beta",
        "gamma",
        "delta",
        "epsilon",
        "zeta",
        "eta",
        "theta",
        "iota",
        "kappa",
        "lambda",
        "mu",
        "nu",
        "xi",
        "omicron",
        "pi",
        "rho",
        "sigma",
        "tau",
        "upsilon",
        "phi",
        "chi",
        "psi",
        "omega",
    ];

    /// <summary>Short forms that catalogues use, and what they stand for.</summary>
    private static readonly string[] Short =
    [
        "alf",
        "alpha",
        "alp",
        "alpha",
        "bet",
        "beta",
        "gam",
        "gamma",
        "del",
        "delta",
        "eps",
        "epsilon",
        "zet",
        "zeta",
        "iot",
        "iota",
        "kap",
        "kappa",
        "lam",
        "lambda",
        "ksi",
        "xi",
        "omi",
        "omicron",
        "sig",
        "sigma",
        "ups",
        "upsilon",
        "ome",
        "omega",
    ];

    /// <summary>The name of a Greek letter; null for any other character.</summary>
    public static string? NameOf(char letter) =>
        char.ToLowerInvariant(letter) switch
        {
            'ς' => "sigma",
            'ϑ' => "theta",
            'ϕ' => "phi",
            'ϵ' => "epsilon",
            // The final sigma stands in the middle of the alphabet.
            >= 'α' and <= 'ρ' and var c => Greek[c - 'α'],
            >= 'σ' and <= 'ω' and var c => Greek[c - 'α' - 1],
            _ => null,
        };

    /// <summary>True for the name or a short form of a Greek letter.</summary>
    public static bool IsGreek(string word) => word.Length > 1 && Spelled(word) is not null;

    /// <summary>Reads the part in front of a constellation: "61", "alpha", "alf2", "b3", "3alpha" (the letter wins).</summary>
    /// <param name="text">Small letters, digits and hyphens.</param>
    /// <param name="star">The letter with its index, or the number.</param>
    /// <returns>True if it reads like a star.</returns>
    public static bool TryRead(ReadOnlySpan<char> text, out string star)
    {
        star = string.Empty;
        var letterStart = 0;
        while (letterStart < text.Length && char.IsAsciiDigit(text[letterStart]))
        {
            letterStart++;
        }

        var letterEnd = letterStart;
        while (letterEnd < text.Length && char.IsAsciiLetterLower(text[letterEnd]))
        {
            letterEnd++;
        }

        var index = text[letterEnd..];
        if (index.ContainsAnyExceptInRange('0', '9'))
        {
            return false;
        }

        if (letterEnd == letterStart)
        {
            // No letter: one run of digits, which is all of the text.
            star = text.ToString();
            return text.Length > 0;
        }

        var letter = Spelled(text[letterStart..letterEnd]);
        if (letter is null)
        {
            return false;
        }

        star = string.Concat(letter, index);
        return true;
    }

    private static string? Spelled(ReadOnlySpan<char> letter)
    {
        if (letter.Length == 1)
        {
            return letter.ToString();
        }

        for (var i = 0; i < Short.Length; i += 2)
        {
            if (letter.SequenceEqual(Short[i]))
            {
                return Short[i + 1];
            }
        }

        foreach (var name in Greek)
        {
            if (letter.SequenceEqual(name))
            {
                return name;
            }
        }

        return null;
    }
}
