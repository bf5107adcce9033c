namespace Framing.Workshop;

/// <summary>What is noted while a plan file is read: faults, and where each key stands.</summary>
internal sealed class PlanNotes
{
    private readonly List<PlanFileError> errors = [];
    private readonly List<(PlanTable Table, TomlEntry Entry)> unknown = [];
    private readonly List<(PlanTable Table, string Key, string Problem)> missing = [];
    private readonly Dictionary<string, Noted> places = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<string>> own = new(StringComparer.Ordinal);
    private readonly List<string> files = [];

    public void Add(PlanFileError error) => errors.Add(error);

    public void Missing(PlanTable table, string key, string problem) =>
        missing.Add((table, key, problem));

    public void Unknown(PlanTable table, TomlEntry entry) => unknown.Add((table, entry));

    /// <summary>Keeps where a key and its value stand.</summary>
    public void Place(string key, PlanPlace keyAt, PlanPlace at, string? written)
    {
        places[key] = new(keyAt, at, written);
        if (!files.Contains(at.File, StringComparer.Ordinal))
        {
            files.Add(at.File);
        }
    }

    /// <summary>Keeps the keys that a table knows.</summary>
    public void Own(string table, IEnumerable<string> keys) =>
        own[Unnumbered(table)] = [.. keys.Distinct(StringComparer.Ordinal)];

    public IReadOnlyList<string> OwnKeys(string table) =>
        own.GetValueOrDefault(Unnumbered(table)) ?? [];

    /// <summary>Where a key's value stands and what it is; where its list or its table starts when it is not there.</summary>
    public (PlanPlace At, string? Written) Find(string key)
    {
        if (places.TryGetValue(key, out var found))
        {
            return (found.At, found.Written);
        }

        if (key.EndsWith(']') && key.LastIndexOf('[') is > 0 and var bracket)
        {
            return Find(key[..bracket]);
        }

        return key.LastIndexOf('.') is > 0 and var dot
            ? (Find(key[..dot]).At, null)
            : (
                places.TryGetValue("", out var top)
                    ? top.At with
                    {
                        Line = 0,
                        Column = 0,
                    }
                    : default,
                null
            );
    }

    /// <summary>Where a key itself stands.</summary>
    public PlanPlace KeyPlace(string key) =>
        places.TryGetValue(key, out var found) ? found.KeyAt : Find(key).At;

    /// <summary>Ends the reading.</summary>
    /// <exception cref="PlanFileException">Something was wrong.</exception>
    public void ThrowIfAny()
    {
        var guesses = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (table, entry) in unknown)
        {
            errors.Add(
                Unknown(table.Name, entry.Key, entry.At, OwnKeys(table.Name), out var guess)
            );
            guesses.Add(table.Full(guess ?? ""));
        }

        // A key that was only misspelt is not missing as well.
        foreach (var (table, key, problem) in missing)
        {
            if (!guesses.Contains(table.Full(key)))
            {
                errors.Add(new(table.At, table.Full(key), null, problem));
            }
        }

        if (errors.Count > 0)
        {
            throw new PlanFileException(Sorted(errors));
        }
    }

    /// <summary>The fault of a key that a table does not know.</summary>
    public PlanFileError Unknown(
        string table,
        string key,
        PlanPlace at,
        IReadOnlyList<string> known,
        out string? guess
    )
    {
        guess = NearestName.Among(key, known) ?? Longer(key, known);
        var place = table.Length == 0 ? "at the top of the file" : $"in [{Unnumbered(table)}]";
        var full = table.Length == 0 ? TomlTree.OneLine(key) : table + "." + TomlTree.OneLine(key);
        var others = own.Where(entry => entry.Value.Contains(key, StringComparer.Ordinal))
            .Select(entry => entry.Key);
        var advice = (guess, others.FirstOrDefault()) switch
        {
            (_, { Length: > 0 } other) => $"it belongs in [{other}]",
            (_, "") => "it belongs at the top of the file, above the first [table]",
            ({ } near, _) => $"did you mean {near}?",
            _ => $"there are {Words.Joined(known, "and")}",
        };
        return new(at, full, null, $"is not known {place}; {advice}");
    }

    /// <summary>Findings in the order of the files and of their lines.</summary>
    public IReadOnlyList<PlanFileError> Sorted(IEnumerable<PlanFileError> found) =>
        [
            .. found
                .OrderBy(error => files.IndexOf(error.Place.File))
                .ThenBy(error => error.Place.Line)
                .ThenBy(error => error.Place.Column),
        ];

    // "latitude" is meant for latitude_deg, however many letters are missing.
    private static string? Longer(string key, IReadOnlyList<string> known) =>
        key.Length >= 3
            ? known.FirstOrDefault(name => name.StartsWith(key, StringComparison.OrdinalIgnoreCase))
            : null;

    private static string Unnumbered(string table)
    {
        var bracket = table.IndexOf('[', StringComparison.Ordinal);
        return bracket < 0 ? table : table[..bracket];
    }

    private sealed record Noted(PlanPlace KeyAt, PlanPlace At, string? Written);
}
