using System.Globalization;
using System.Text;

namespace Framing.Catalogue;

/// <summary>Looks through all keys for those nearest to one that was not found.</summary>
internal static class NearMisses
{
    // Penalties in hundredths of a slip of typing.
    private const int Slip = 100;
    private const int WithoutGeneralWords = 40;
    private const int OtherFirstLetter = 20;
    private const int OtherCatalogue = 130;
    private const int PartOfName = 90;
    private const int LeastPart = 4;

    /// <summary>The things whose keys are nearest, the nearest first; each thing once.</summary>
    /// <param name="table">The table.</param>
    /// <param name="words">What was asked for.</param>
    /// <param name="key">Its key.</param>
    /// <param name="most">How many to give.</param>
    public static List<NameTarget> Of(NameTable table, string words, string key, int most)
    {
        var shortKey = WithoutEnd(words, key);
        var best = new List<(int Score, NameTarget Target)>(most + 1);
        Span<char> buffer = stackalloc char[256];
        for (var row = 0; row < table.KeyCount; row++)
        {
            var bytes = table.Key(row);
            if (bytes.Length > buffer.Length)
            {
                continue;
            }

            var candidate = buffer[..Encoding.ASCII.GetChars(bytes, buffer)];
            var score = Score(key, candidate);
            if (shortKey.Length < key.Length)
            {
                score = Math.Min(score, Score(shortKey, candidate) + WithoutGeneralWords);
            }

            Keep(best, score, table.Target(row), most);
        }

        return best.ConvertAll(pair => pair.Target);
    }

    private static void Keep(
        List<(int Score, NameTarget Target)> best,
        int score,
        NameTarget target,
        int most
    )
    {
        if (best.Count == most && score >= best[^1].Score)
        {
            return;
        }

        var known = best.FindIndex(pair => pair.Target == target);
        if (known >= 0)
        {
            if (best[known].Score <= score)
            {
                return;
            }

            best.RemoveAt(known);
        }

        var at = best.FindIndex(pair => pair.Score > score);
        best.Insert(at < 0 ? best.Count : at, (score, target));
        if (best.Count > most)
        {
            best.RemoveAt(most);
        }
    }

    private static int Score(ReadOnlySpan<char> key, ReadOnlySpan<char> candidate)
    {
        var letters = Letters(key);
        var sameStart =
            letters > 0
            && Letters(candidate) == letters
            && key[..letters].SequenceEqual(candidate[..letters]);
        var isNumber = letters < key.Length;
        var score =
            (Slip * EditDistance.Between(key, candidate))
            + (key[0] == candidate[0] ? 0 : OtherFirstLetter);
        if (isNumber)
        {
            // A slip in a number: the same catalogue first, then the number next to it.
            return sameStart
                ? score + NumberPenalty(key[letters..], candidate[letters..])
                : score + OtherCatalogue;
        }

        // "heart neb" and "trunk" are parts of names.
        if (key.Length >= LeastPart && candidate.IndexOf(key) is var at and >= 0)
        {
            return Math.Min(
                score,
                PartOfName + (at > 0 ? OtherFirstLetter : 0) + (candidate.Length - key.Length)
            );
        }

        return score;
    }

    private static int NumberPenalty(ReadOnlySpan<char> wanted, ReadOnlySpan<char> found)
    {
        wanted = wanted.TrimStart('-');
        found = found.TrimStart('-');
        const int Most = Slip - 1;
        return Number(wanted) is { } left && Number(found) is { } right
            ? (int)Math.Min(Most, Math.Abs(left - right))
            : Most;
    }

    private static long? Number(ReadOnlySpan<char> digits) =>
        int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number
            : null;

    private static int Letters(ReadOnlySpan<char> key)
    {
        var count = 0;
        while (count < key.Length && !char.IsAsciiDigit(key[count]))
        {
            count++;
        }

        // The 2 of "sh2-129" belongs to the catalogue.
        return key.StartsWith("sh2-") ? "sh2-".Length : count;
    }

    /// <summary>The key without the general words at its end, so that "hart galaxy" is measured by "hart".</summary>
    private static string WithoutEnd(string words, string key)
    {
        var list = NameKey.Words(words);
        while (
            list.Count > 1
            && list[^1]
                is "nebula"
                    or "galaxy"
                    or "cluster"
                    or "region"
                    or "complex"
                    or "remnant"
                    or "star"
        )
        {
            list.RemoveAt(list.Count - 1);
        }

        var shortKey = NameKey.Glue(list);
        return shortKey.Length is > 0 && shortKey.Length < key.Length ? shortKey : key;
    }
}
