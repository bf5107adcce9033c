using System.Globalization;

namespace Framing.Catalogue;

/// <summary>The search by name: exact on keys; only if that fails are near misses looked for.</summary>
internal static class NameSearch
{
    private const int MostSuggestions = 3;

    public static FindResult Find(NameTable table, string words)
    {
        var key = NameKey.Of(words);
        if (key.Length == 0)
        {
            return new(words, entry: null, isAmbiguous: false, []);
        }

        if (TryHipparcos(key, out var number))
        {
            // No number is nearer to what was meant than another.
            return new(words, Star(number), isAmbiguous: false, []);
        }

        var (row, count) = table.Rows(key);
        if (count == 1)
        {
            return new(words, Entry(table.Target(row)), isAmbiguous: false, []);
        }

        return count > 1 ? Several(table, words, row, count) : NotFound(table, words, key);
    }

    /// <summary>Makes the entry a key stands for.</summary>
    public static CatalogueEntry Entry(NameTarget target)
    {
        var table = NameTable.Embedded;
        if (!target.IsStar)
        {
            return new DeepSkyObject(target.Row, table.Object(target.Row));
        }

        var hipparcos = table.Hipparcos(target.Row);
        return Star(hipparcos)
            ?? throw new InvalidDataException(
                FormattableString.Invariant(
                    $"The star table has no HIP {hipparcos}, which the name table names."
                )
            );
    }

    private static NamedStar? Star(int hipparcos) =>
        StarCatalogue.Embedded.WithHipparcos(hipparcos) is { } star
            ? new(star, StarCatalogue.NameOf(hipparcos), hipparcos)
            : null;

    private static bool TryHipparcos(string key, out int number)
    {
        number = 0;
        return key.StartsWith("hip", StringComparison.Ordinal)
            && int.TryParse(
                key.AsSpan(3),
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out number
            );
    }

    private static FindResult Several(NameTable table, string words, int row, int count)
    {
        var entries = new List<CatalogueEntry>(count);
        for (var i = 0; i < count; i++)
        {
            entries.Add(Entry(table.Target(row + i)));
        }

        // Capital and small letters are different stars: "l Car" and "L Car". Of objects case tells nothing.
        var spaced = string.Join(' ', words.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        var exact = entries.FindAll(entry => entry is NamedStar && HasName(entry, spaced));
        if (exact.Count == 1)
        {
            return new(words, exact[0], isAmbiguous: false, []);
        }

        var suggestions = new List<Suggestion>(MostSuggestions);
        foreach (var entry in entries)
        {
            if (suggestions.Count < MostSuggestions)
            {
                suggestions.Add(new(Unambiguous(table, entry), entry));
            }
        }

        return new(words, entry: null, isAmbiguous: true, suggestions);
    }

    private static bool HasName(CatalogueEntry entry, string name)
    {
        foreach (var one in entry.Names)
        {
            if (string.Equals(one, name, StringComparison.Ordinal))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The first name of an entry that means it alone.</summary>
    private static string Unambiguous(NameTable table, CatalogueEntry entry)
    {
        foreach (var name in entry.Names)
        {
            var (row, count) = table.Rows(NameKey.Of(name));
            if (count == 1 && Entry(table.Target(row)).Id == entry.Id)
            {
                return name;
            }
        }

        return entry.Id;
    }

    private static FindResult NotFound(NameTable table, string words, string key)
    {
        var suggestions = new List<Suggestion>(MostSuggestions);
        foreach (var target in NearMisses.Of(table, words, key, MostSuggestions))
        {
            var entry = Entry(target);
            suggestions.Add(new(Nearest(table, entry, key), entry));
        }

        return new(words, entry: null, isAmbiguous: false, suggestions);
    }

    /// <summary>The name of an entry that is nearest to what was asked for and means it.</summary>
    private static string Nearest(NameTable table, CatalogueEntry entry, string key)
    {
        var best = Unambiguous(table, entry);
        var least = int.MaxValue;
        foreach (var name in entry.Names)
        {
            var other = NameKey.Of(name);
            var distance = EditDistance.Between(key, other);
            if (distance < least && table.Rows(other).Count == 1)
            {
                (best, least) = (name, distance);
            }
        }

        return best;
    }
}
