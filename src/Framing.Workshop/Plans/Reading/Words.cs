namespace Framing.Workshop;

/// <summary>Lists of words for messages.</summary>
internal static class Words
{
    /// <summary>For example <c>"centre" or "corner"</c>.</summary>
    public static string Quoted(IReadOnlyList<string> names) =>
        Joined([.. names.Select(name => "\"" + name + "\"")], "or");

    /// <summary>For example <c>a, b and c</c>.</summary>
    public static string Joined(IReadOnlyList<string> names, string last) =>
        names.Count switch
        {
            0 => "",
            1 => names[0],
            _ => string.Join(", ", names.Take(names.Count - 1)) + " " + last + " " + names[^1],
        };
}
