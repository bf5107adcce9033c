using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace Framing.Workshop;

/// <summary>Writes what was learned into a plan, or into the file that the plan names for one of its tables.</summary>
/// <remarks>Only the values change, or lines are added: comments, order and everything else of the file stay as they are.</remarks>
internal static class PlanEditor
{
    /// <summary>Sets keys of a table.</summary>
    /// <param name="planPath">The plan file.</param>
    /// <param name="table"><c>rig</c>, <c>site</c> or <c>mount</c>.</param>
    /// <param name="values">Keys with their values as TOML writes them.</param>
    /// <returns>The file that was written, as the plan names it.</returns>
    /// <exception cref="InputException">It cannot be written; it says what to put into it by hand.</exception>
    public static string Set(
        string planPath,
        string table,
        IReadOnlyList<(string Key, string Value)> values
    )
    {
        var path = FileOf(planPath, table);
        var text = Read(path);
        var edited = text;
        foreach (var (key, value) in values)
        {
            edited =
                Edited(path, edited, table, key, value, standsAlone: path != planPath)
                ?? throw new InputException(
                    $"{path}: {table}.{key} stands where it cannot be changed safely; set {key} = {value} by hand"
                );
        }

        // What cannot be read again is not written.
        TomlTree.Read(path, edited);
        if (!string.Equals(edited, text, StringComparison.Ordinal))
        {
            OutputFile.Write(path, System.Text.Encoding.UTF8.GetBytes(edited));
        }

        return path;
    }

    private static string FileOf(string planPath, string table)
    {
        var top = TomlTree.Read(planPath, Read(planPath));
        return top[table] is { Kind: TomlKind.Text } named
            ? PlanPaths.Join(PlanPaths.Folder(planPath), ((string)named.Content!).Trim())
            : planPath;
    }

    private static string Read(string path) =>
        new DiskPlanFiles().Read(path, PlanFiles.MostTomlBytes, out var text) is { } error
            ? throw new PlanFileException([error])
            : text;

    /// <summary>The text with the key set; null where that cannot be done safely.</summary>
    private static string? Edited(
        string path,
        string text,
        string table,
        string key,
        string value,
        bool standsAlone
    )
    {
        var document = SyntaxParser.Parse(text, path);
        var section = document.Tables.FirstOrDefault(candidate =>
            candidate is TableSyntax && NameOf(candidate.Name) == table
        );
        var inside = document.KeyValues.FirstOrDefault(pair => NameOf(pair.Key) == table);
        if (inside is not null)
        {
            // mount = { … }: a value in braces can be changed, but not safely added.
            return
                inside.Value is InlineTableSyntax braces
                && braces.Items.FirstOrDefault(item => NameOf(item.KeyValue?.Key) == key)
                    is { KeyValue.Value: { } known }
                ? Replaced(text, known.Span, value)
                : null;
        }

        var pairs =
            section is not null ? section.Items
            : standsAlone ? document.KeyValues
            : null;
        var newLine = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        var line = $"{key} = {value} # learned";
        if (pairs is null)
        {
            var gap = text.Length == 0 || text.EndsWith('\n') ? newLine : newLine + newLine;
            return $"{text}{gap}[{table}]{newLine}{line}{newLine}";
        }

        if (pairs.FirstOrDefault(pair => NameOf(pair.Key) == key) is { Value: { } old })
        {
            return Replaced(text, old.Span, value);
        }

        // Below the last key of the table, or below its head.
        var after =
            pairs.LastOrDefault()?.Value?.Span.End.Offset ?? section?.Name?.Span.End.Offset ?? -1;
        var end = after < 0 ? -1 : text.IndexOf('\n', Math.Min(after, text.Length - 1));
        return after < 0 ? line + newLine + text
            : end < 0 ? text + newLine + line + newLine
            : text[..(end + 1)] + line + newLine + text[(end + 1)..];
    }

    private static string Replaced(string text, SourceSpan span, string value) =>
        text[..span.Start.Offset] + value + text[(span.End.Offset + 1)..];

    private static string? NameOf(KeySyntax? key) =>
        key is { Key: { } first } && !key.DotKeys.Any()
            ? first switch
            {
                BareKeySyntax bare => bare.Key?.Text,
                StringValueSyntax quoted => quoted.Value,
                _ => null,
            }
            : null;
}
