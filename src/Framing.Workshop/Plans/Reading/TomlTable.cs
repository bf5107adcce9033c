namespace Framing.Workshop;

/// <summary>A table of a TOML file: its keys in the order of the file.</summary>
/// <param name="at">Where it starts: its header, or its brace.</param>
internal sealed class TomlTable(PlanPlace at)
{
    private readonly List<TomlEntry> entries = [];

    public PlanPlace At { get; } = at;

    public IReadOnlyList<TomlEntry> Entries => entries;

    public TomlValue? this[string key] => Find(key)?.Value;

    public TomlEntry? Find(string key) =>
        entries.Find(entry => string.Equals(entry.Key, key, StringComparison.Ordinal));

    /// <summary>Adds a key; false when it is there already.</summary>
    public bool Add(string key, PlanPlace keyAt, TomlValue value)
    {
        if (Find(key) is not null)
        {
            return false;
        }

        entries.Add(new(key, keyAt, value));
        return true;
    }
}

/// <summary>A key of a table, where it stands, and its value.</summary>
internal sealed record TomlEntry(string Key, PlanPlace At, TomlValue Value);
