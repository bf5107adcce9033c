namespace Framing.Sky.Tests;

/// <summary>A file of check values, copied as it is.</summary>
internal sealed class CheckFile
{
    private readonly Dictionary<string, CheckValue> entries;

    /// <param name="name">The file in Data.</param>
    /// <param name="prefix">Only the entries whose id begins so.</param>
    public CheckFile(string name, string prefix = "") =>
        entries = TestData
            .Json(name)
            .EnumerateArray()
            .Select(entry => new CheckValue(entry))
            .Where(entry => entry.Id.StartsWith(prefix, StringComparison.Ordinal))
            .ToDictionary(entry => entry.Id, StringComparer.Ordinal);

    public int Count => entries.Count;

    public IEnumerable<string> Ids => entries.Keys;

    public CheckValue this[string id] => entries[id];
}
