namespace Framing.Workshop;

/// <summary>What a value of a TOML file is.</summary>
internal enum TomlKind
{
    Text,
    Whole,
    Number,
    Flag,
    Date,
    Time,
    List,
    Table,
}

/// <summary>A value of a TOML file with its place.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="At">Where it starts.</param>
/// <param name="Written">As written, on one line, cut where it is long.</param>
/// <param name="Content">
/// A string, long, double, bool, DateOnly, list of values or table; nothing for dates with a time and times.
/// </param>
internal sealed record TomlValue(TomlKind Kind, PlanPlace At, string Written, object? Content)
{
    public IReadOnlyList<TomlValue> Items => Content as List<TomlValue> ?? [];

    public TomlTable? Table => Content as TomlTable;
}
