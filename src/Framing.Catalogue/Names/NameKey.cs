using System.Text;

namespace Framing.Catalogue;

/// <summary>
/// The search key of a name: what is left when case, spaces, punctuation, accents, leading zeros and spelling habits are
/// taken away.
/// </summary>
/// <remarks>
/// "NGC0281" is ngc281, "Sh 2 - 129" is sh2-129, "the Heart Nebulae" is heartnebula, "alpha Lyrae" is alphalyr. The rules
/// are those of tests/reference/catalogue/name_keys.py, which made the keys of the table; a test holds both together.
/// </remarks>
internal static class NameKey
{
    private const int MostSharplessDigits = 3;
    private const int LongestName = 100;

    /// <summary>Catalogue names written out, and their short forms; they count only in front of a number.</summary>
    private static readonly string[] Catalogues =
    [
        "messier",
        "m",
        "caldwell",
        "c",
        "barnard",
        "b",
        "melotte",
        "mel",
        "collinder",
        "cr",
        "cederblad",
        "ced",
        "palomar",
        "pal",
        "trumpler",
        "tr",
        "ruprecht",
        "ru",
        "abell",
        "a",
        "hickson",
        "hcg",
        "westerhout",
        "w",
        "hipparcos",
        "hip",
        "sharpless",
        "sh",
    ];

    /// <summary>The key of a name; empty if it has neither letters nor digits.</summary>
    public static string Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var glued = Glue(Words(text));
        return StarKey(glued) ?? glued;
    }

    /// <summary>True if a key reads like a letter or number in a constellation: alphalyr, 61cyg.</summary>
    public static bool IsStar(string key) => StarKey(key) is not null;

    /// <summary>The words of a name with spelling habits evened out.</summary>
    public static List<string> Words(string text)
    {
        var tokens = Tokens(text);
        if (tokens.Count > 1 && tokens[0] == "the")
        {
            tokens.RemoveAt(0);
        }

        var words = new List<string>(tokens.Count);
        for (var i = 0; i < tokens.Count; i++)
        {
            var word = tokens[i];
            var more = tokens.Count - i;
            if (
                more > 3
                && word == "van"
                && tokens[i + 1] == "den"
                && tokens[i + 2] == "bergh"
                && IsNumber(tokens[i + 3])
            )
            {
                words.Add("vdb");
                i += 2;
            }
            else if (more > 1 && IsNumber(tokens[i + 1]))
            {
                word = ShortForm(word);
                if (word == "sh")
                {
                    word = "sh2";
                    i += SharplessNumber(tokens, i + 1);
                }

                words.Add(Singular(word));
            }
            else if (!(word == "and" && more > 1 && words.Count > 0 && IsNumber(words[^1])))
            {
                words.Add(Singular(word));
            }
        }

        return words;
    }

    /// <summary>Words run together; only two numbers stay apart.</summary>
    public static string Glue(List<string> words)
    {
        var glued = new StringBuilder();
        foreach (var word in words)
        {
            if (glued.Length > 0 && char.IsAsciiDigit(glued[^1]) && char.IsAsciiDigit(word[0]))
            {
                glued.Append('-');
            }

            glued.Append(word);
        }

        return glued.ToString();
    }

    /// <summary>"alphalyrae" becomes alphalyr, "61cygnia" 61cyga; null if the text does not read like a star in a constellation.</summary>
    private static string? StarKey(string glued)
    {
        if (ConstellationNames.TryCut(glued, out var star, out var letters))
        {
            return star + letters;
        }

        // One letter more: a part of a double star.
        if (
            glued.Length > 0
            && glued[^1] is >= 'a' and <= 'd'
            && ConstellationNames.TryCut(glued.AsSpan(0, glued.Length - 1), out star, out letters)
        )
        {
            return star + letters + glued[^1];
        }

        return null;
    }

    /// <summary>
    /// "Sh 2-129", "Sh2-129", "Sharpless 129", "Sh 129" and "Sh2129" are one. Cuts a "2" that is run into the number,
    /// and returns how many tokens to pass over.
    /// </summary>
    private static int SharplessNumber(List<string> tokens, int at)
    {
        var number = tokens[at];
        if (number == "2" && at + 1 < tokens.Count && IsNumber(tokens[at + 1]))
        {
            return 1;
        }

        // The catalogue ends at 313.
        if (number.Length > MostSharplessDigits && number[0] == '2')
        {
            tokens[at] = WithoutZeros(number[1..]);
        }

        return 0;
    }

    private static string ShortForm(string word)
    {
        for (var i = 0; i < Catalogues.Length; i += 2)
        {
            if (word == Catalogues[i])
            {
                return Catalogues[i + 1];
            }
        }

        return word;
    }

    private static string Singular(string word) =>
        word switch
        {
            "nebulae" or "nebulas" => "nebula",
            "galaxies" => "galaxy",
            "clusters" => "cluster",
            _ => word,
        };

    private static bool IsNumber(string token) => char.IsAsciiDigit(token[0]);

    /// <summary>Runs of letters and runs of digits; a plus between two digits is kept (it is part of some designations).</summary>
    private static List<string> Tokens(string text)
    {
        var folded = Fold(text);
        var tokens = new List<string>();
        for (var i = 0; i < folded.Length; )
        {
            var start = i;
            if (char.IsAsciiDigit(folded[i]))
            {
                while (i < folded.Length && char.IsAsciiDigit(folded[i]))
                {
                    i++;
                }

                tokens.Add(WithoutZeros(folded[start..i]));
            }
            else if (char.IsAsciiLetterLower(folded[i]))
            {
                while (i < folded.Length && char.IsAsciiLetterLower(folded[i]))
                {
                    i++;
                }

                tokens.Add(folded[start..i]);
            }
            else
            {
                i++;
                if (
                    folded[start] == '+'
                    && start > 0
                    && char.IsAsciiDigit(folded[start - 1])
                    && i < folded.Length
                    && char.IsAsciiDigit(folded[i])
                )
                {
                    tokens.Add("+");
                }
            }
        }

        return tokens;
    }

    private static string WithoutZeros(string digits)
    {
        var kept = digits.TrimStart('0');
        return kept.Length == 0 ? "0" : kept;
    }

    /// <summary>Small letters without accents or apostrophes; Greek letters written out; raised digits as digits.</summary>
    private static string Fold(string text)
    {
        // No name is longer; what follows cannot make one of it.
        var length = Math.Min(text.Length, LongestName);
        var folded = new StringBuilder(length + 16);
        for (var i = 0; i < length; i++)
        {
            var c = text[i];
            if (c < 128 && c is not ('\'' or '`' or '&'))
            {
                folded.Append(char.ToLowerInvariant(c));
            }
            else if (c == '&')
            {
                folded.Append(" and ");
            }
            else if (c is '\'' or '`' or '’' or '‘' or 'ʼ' or '´')
            {
                // "Barnard's" and "Barnards" are one word.
            }
            else if (c is >= '\u0300' and <= '\u036f')
            {
                // An accent written as a character of its own.
            }
            else if (StarLetters.NameOf(c) is { } letter)
            {
                folded.Append(' ').Append(letter).Append(' ');
            }
            else
            {
                folded.Append(Plain(c));
            }
        }

        return folded.ToString();
    }

    /// <summary>The plain letter or digit behind an accented letter or raised digit; a space for any other character.</summary>
    private static char Plain(char c) =>
        char.ToLowerInvariant(c) switch
        {
            'à' or 'á' or 'â' or 'ã' or 'ä' or 'å' or 'ā' => 'a',
            'ç' or 'ć' or 'č' => 'c',
            'è' or 'é' or 'ê' or 'ë' or 'ē' => 'e',
            'ì' or 'í' or 'î' or 'ï' or 'ī' => 'i',
            'ñ' or 'ń' => 'n',
            'ò' or 'ó' or 'ô' or 'õ' or 'ö' or 'ō' => 'o',
            'ś' or 'š' => 's',
            'ù' or 'ú' or 'û' or 'ü' or 'ū' => 'u',
            'ý' or 'ÿ' => 'y',
            'ž' => 'z',
            '⁰' or '₀' => '0',
            '¹' or '₁' => '1',
            '²' or '₂' => '2',
            '³' or '₃' => '3',
            >= '⁴' and <= '⁹' => (char)('4' + (c - '⁴')),
            >= '₄' and <= '₉' => (char)('4' + (c - '₄')),
            _ => ' ',
        };
}
