using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace Framing.Workshop;

/// <summary>The text of a plan file in which single values change and everything else stays: comments, order, spaces.</summary>
/// <remarks>
/// Keys are written with their tables (<c>mosaic.grid</c>); the tables of a list count from 1 (<c>night.filter[2].sub_s</c>).
/// A value is given as TOML has it: <c>"fewest"</c> with its quotes, <c>[2, 1]</c>, <c>250</c>.
/// </remarks>
internal static class PlanText
{
    /// <summary>Gives a key a value; a key that is not there is added at the end of its table, a table at the end of the file.</summary>
    /// <param name="file">What the file is called in messages.</param>
    /// <param name="text">The text, sound TOML.</param>
    /// <param name="key">The key with its table.</param>
    /// <param name="value">The value as TOML has it.</param>
    /// <returns>The new text.</returns>
    /// <exception cref="PlanFileException">The text, or what would come of it, is no TOML, or the key cannot stand there.</exception>
    public static string With(string file, string text, string key, string value)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentException.ThrowIfNullOrEmpty(key);
        ArgumentException.ThrowIfNullOrEmpty(value);
        var document = Parsed(file, text);
        var changed = Find(document, key) is { } pair
            ? Replaced(text, pair.Value!.Span, value)
            : Added(text, document, key, value);
        if (Find(Parsed(file, changed), key) is null)
        {
            throw Refused(file, key, "cannot be set here; edit the file by hand");
        }

        return changed;
    }

    /// <summary>Takes a key away, with its line and what is remarked on it.</summary>
    /// <param name="file">What the file is called in messages.</param>
    /// <param name="text">The text, sound TOML.</param>
    /// <param name="key">The key with its table.</param>
    /// <returns>The new text; the same where the key is not there.</returns>
    /// <exception cref="PlanFileException">The text, or what would come of it, is no TOML.</exception>
    public static string Without(string file, string text, string key)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentException.ThrowIfNullOrEmpty(key);
        if (Find(Parsed(file, text), key) is not { } pair)
        {
            return text;
        }

        var start = LineStart(text, pair.Key!.Span.Start.Offset);
        var end = LineEnd(text, pair.Value!.Span.End.Offset + 1);
        var changed = text.Remove(start, end - start);
        if (Find(Parsed(file, changed), key) is not null)
        {
            throw Refused(file, key, "cannot be taken away here; edit the file by hand");
        }

        return changed;
    }

    /// <summary>True when a key stands in the text itself.</summary>
    /// <param name="file">What the file is called in messages.</param>
    /// <param name="text">The text, sound TOML.</param>
    /// <param name="key">The key with its table.</param>
    /// <exception cref="PlanFileException">The text is no TOML.</exception>
    public static bool Has(string file, string text, string key) =>
        Find(Parsed(file, text), key) is not null;

    private static DocumentSyntax Parsed(string file, string text)
    {
        // The reader's own checks first: they say in one line what is wrong and where.
        _ = TomlTree.Read(file, text);
        return SyntaxParser.Parse(text, file);
    }

    private static string Replaced(string text, SourceSpan span, string value) =>
        string.Concat(text.AsSpan(0, span.Start.Offset), value, text.AsSpan(span.End.Offset + 1));

    private static string Added(string text, DocumentSyntax document, string key, string value)
    {
        var dot = key.LastIndexOf('.');
        var (table, name) = dot < 0 ? ("", key) : (key[..dot], key[(dot + 1)..]);
        var line = $"{name} = {value}{NewLine(text)}";
        if (table.Length == 0)
        {
            var last = document.KeyValues.LastOrDefault();
            return text.Insert(
                last is null ? 0 : LineEnd(text, last.Value!.Span.End.Offset + 1),
                line
            );
        }

        if (Section(document, table) is { } section)
        {
            var lastOffset = section.Items.LastOrDefault() is { } item
                ? item.Value!.Span.End.Offset
                : section.CloseBracket!.Span.End.Offset;
            var end = LineEnd(text, lastOffset + 1);
            return text.Insert(
                end,
                EndsOpen(text, end) ? NewLine(text) + line.TrimEnd('\r', '\n') : line
            );
        }

        var gap =
            text.Length == 0 ? ""
            : EndsOpen(text, text.Length) ? NewLine(text) + NewLine(text)
            : NewLine(text);
        return $"{text}{gap}[{table}]{NewLine(text)}{line}";
    }

    private static KeyValueSyntax? Find(DocumentSyntax document, string key)
    {
        foreach (var (prefix, items) in Tables(document))
        {
            foreach (var pair in items)
            {
                if (string.Equals(Joined(prefix, Name(pair.Key!)), key, StringComparison.Ordinal))
                {
                    return pair;
                }
            }
        }

        return null;
    }

    private static TableSyntaxBase? Section(DocumentSyntax document, string table)
    {
        var counts = new Dictionary<string, int>(StringComparer.Ordinal);
        return document.Tables.LastOrDefault(section =>
            string.Equals(Title(section, counts), table, StringComparison.Ordinal)
        );
    }

    private static IEnumerable<(string Prefix, IEnumerable<KeyValueSyntax> Items)> Tables(
        DocumentSyntax document
    )
    {
        yield return ("", document.KeyValues);
        var counts = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var section in document.Tables)
        {
            yield return (Title(section, counts), section.Items);
        }
    }

    private static string Title(TableSyntaxBase section, Dictionary<string, int> counts)
    {
        var name = Name(section.Name!);
        if (section is not TableArraySyntax)
        {
            return name;
        }

        var count = counts.GetValueOrDefault(name) + 1;
        counts[name] = count;
        return FormattableString.Invariant($"{name}[{count}]");
    }

    private static string Name(KeySyntax key) => string.Join('.', TomlTree.Names(key));

    private static string Joined(string prefix, string name) =>
        prefix.Length == 0 ? name : prefix + "." + name;

    private static int LineStart(string text, int offset) =>
        offset == 0 ? 0 : text.LastIndexOf('\n', offset - 1) + 1;

    /// <summary>Past the end of the line that holds an offset.</summary>
    private static int LineEnd(string text, int offset)
    {
        var end = text.IndexOf('\n', Math.Min(offset, text.Length));
        return end < 0 ? text.Length : end + 1;
    }

    private static bool EndsOpen(string text, int end) => end > 0 && text[end - 1] != '\n';

    private static string NewLine(string text) =>
        text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";

    private static PlanFileException Refused(string file, string key, string problem) =>
        new([new(new(file, 0, 0), key, null, problem)]);
}
