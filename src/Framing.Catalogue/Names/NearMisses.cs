using System.Globalization;
using System.Text;

namespace Framing.Catalogue;

/// <summary>Looks through all keys for those nearest to one that was not found.</summary>
internal sealed class NearMisses
{
    // Penalties in hundredths of a slip of typing.
    private const int Slip = 100;
    private const int WithoutGeneralWords = 40;
    private const int OtherFirstLetter = 20;
    private const int OtherCatalogue = 130;
    private const int OtherKind = 250;
    private const int PartOfName = 90;
    private const int LeastPart = 4;
    private const int LongestKey = 256;

    private readonly string key;
    private readonly string shortKey;
    private readonly bool isStar;
    private readonly bool isName;
    private readonly int most;
    private readonly List<Candidate> best;

    private NearMisses(string words, string key, int most)
    {
        this.key = key;
        this.most = most;
        shortKey = WithoutEnd(words, key);
        isStar = NameKey.IsStar(key);
        isName = !isStar && !StarLetters.IsGreek(NameKey.Words(words)[0]);
        best = new(most + 1);
    }

    /// <summary>The things whose keys are nearest, the nearest first; each thing once.</summary>
    /// <param name="table">The table.</param>
    /// <param name="words">What was asked for.</param>
    /// <param name="key">Its key.</param>
    /// <param name="most">How many to give.</param>
    public static List<NameTarget> Of(NameTable table, string words, string key, int most)
    {
        var search = new NearMisses(words, key, most);
        Span<char> buffer = stackalloc char[LongestKey];
        for (var row = 0; row < table.KeyCount; row++)
        {
            var bytes = table.Key(row);
            var candidate = buffer[..Encoding.ASCII.GetChars(bytes, buffer)];
            search.Try(candidate, table.Target(row));
        }

        return search.best.ConvertAll(candidate => candidate.Target);
    }

    private void Try(ReadOnlySpan<char> candidate, NameTarget target)
    {
        // "alphalyr" is not what someone meant who wrote a common name, and the other way round; "alpha" and a word that is
        // no constellation may be either.
        var penalty = (target.ByConstellation ? isName : isStar) ? OtherKind : 0;
        var limit = best.Count < most ? int.MaxValue : best[^1].Score - penalty;
        var score = Score(key, candidate, limit);
        if (shortKey.Length < key.Length)
        {
            score = Math.Min(score, Score(shortKey, candidate, limit) + WithoutGeneralWords);
        }

        if (score < limit)
        {
            Keep(new(score + penalty, target));
        }
    }

    private void Keep(Candidate candidate)
    {
        for (var i = 0; i < best.Count; i++)
        {
            if (best[i].Target.IsSameAs(candidate.Target))
            {
                if (best[i].Score <= candidate.Score)
                {
                    return;
                }

                best.RemoveAt(i);
                break;
            }
        }

        var at = best.Count;
        while (at > 0 && best[at - 1].Score > candidate.Score)
        {
            at--;
        }

        best.Insert(at, candidate);
        if (best.Count > most)
        {
            best.RemoveAt(most);
        }
    }

    /// <summary>How far a key is from what was asked for; any number not below the limit if that is certain to be reached.</summary>
    private static int Score(ReadOnlySpan<char> asked, ReadOnlySpan<char> candidate, int limit)
    {
        var letters = Letters(asked);
        var onlyLetters = letters == asked.Length;

        // "heart neb" and "trunk" are parts of names.
        if (onlyLetters && asked.Length >= LeastPart && candidate.IndexOf(asked) is var at and >= 0)
        {
            return PartOfName + (at > 0 ? OtherFirstLetter : 0) + candidate.Length - asked.Length;
        }

        var slipsAtLeast = Slip * Math.Abs(asked.Length - candidate.Length);
        if (slipsAtLeast >= limit)
        {
            return slipsAtLeast;
        }

        var score =
            (Slip * EditDistance.Between(asked, candidate))
            + (asked[0] == candidate[0] ? 0 : OtherFirstLetter);
        if (onlyLetters)
        {
            return score;
        }

        // A slip in a number: the same catalogue first, then the number next to it.
        return Letters(candidate) == letters && asked[..letters].SequenceEqual(candidate[..letters])
            ? score + NumberPenalty(asked[letters..], candidate[letters..])
            : score + OtherCatalogue;
    }

    private static int NumberPenalty(ReadOnlySpan<char> asked, ReadOnlySpan<char> found)
    {
        const int Most = Slip - 1;
        return Number(asked) is { } left && Number(found) is { } right
            ? (int)Math.Min(Most, Math.Abs(left - right))
            : Most;
    }

    private static long? Number(ReadOnlySpan<char> digits) =>
        int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number
            : null;

    private static int Letters(ReadOnlySpan<char> text)
    {
        // The 2 of "sh2-129" belongs to the catalogue.
        const string Sharpless = "sh2-";
        if (text.StartsWith(Sharpless))
        {
            return Sharpless.Length;
        }

        var digit = text.IndexOfAnyInRange('0', '9');
        return digit < 0 ? text.Length : digit;
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

        var cut = NameKey.Glue(list);
        return cut.Length < key.Length ? cut : key;
    }

    private readonly record struct Candidate(int Score, NameTarget Target);
}
