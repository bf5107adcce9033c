using System.Globalization;
using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace Framing.Workshop;

/// <summary>Turns the text of a TOML file into tables whose keys and values know their places.</summary>
/// <remarks>
/// The parser's own mapping lets unknown keys pass and forgets where values stood; therefore its syntax tree is walked.
/// </remarks>
internal sealed class TomlTree
{
    private const int MostWritten = 60;

    private readonly string file;
    private readonly string text;

    private TomlTree(string file, string text)
    {
        this.file = file;
        this.text = text;
    }

    /// <summary>Reads a text.</summary>
    /// <param name="file">What the file is called in messages.</param>
    /// <param name="text">Its text.</param>
    /// <returns>The top of the file.</returns>
    /// <exception cref="PlanFileException">The text is no TOML; the first fault is named.</exception>
    public static TomlTable Read(string file, string text)
    {
        DocumentSyntax document;
        try
        {
            document = SyntaxParser.Parse(text, file);
        }
        catch (TomlException)
        {
            // The parser stops this way at brackets nested deeper than it follows.
            throw new PlanFileException([
                new(
                    new(file, 0, 0),
                    "",
                    null,
                    "this is no TOML that can be read (brackets in brackets without end)"
                ),
            ]);
        }

        if (document.HasErrors)
        {
            throw new PlanFileException([TomlFaults.First(file, text, document)]);
        }

        return new TomlTree(file, text).Build(document);
    }

    private TomlTable Build(DocumentSyntax document)
    {
        var top = new TomlTable(new(file, 1, 1));
        Fill(top, document.KeyValues);
        foreach (var section in document.Tables)
        {
            var names = Names(section.Name!);
            var at = Place(section.Span);
            var parent = Descend(top, names.AsSpan(0, names.Length - 1), at);
            var table =
                section is TableArraySyntax
                    ? Append(parent, names[^1], at)
                    : Descend(parent, [names[^1]], at, "[" + string.Join('.', names) + "]");
            Fill(table, section.Items);
        }

        return top;
    }

    private void Fill(TomlTable table, IEnumerable<KeyValueSyntax> pairs)
    {
        foreach (var pair in pairs)
        {
            var names = Names(pair.Key!);
            var at = Place(pair.Key!.Span);
            Put(
                Descend(table, names.AsSpan(0, names.Length - 1), at),
                names[^1],
                at,
                Value(pair.Value!)
            );
        }
    }

    private static TomlTable Descend(
        TomlTable table,
        ReadOnlySpan<string> names,
        PlanPlace at,
        string? written = null
    )
    {
        foreach (var name in names)
        {
            var inner = table[name] switch
            {
                null => null,
                { Kind: TomlKind.Table, Table: { } found } => found,
                { Kind: TomlKind.List, Items: [.., { Table: { } last }] } => last,
                _ => throw Twice(name, at),
            };
            if (inner is null)
            {
                inner = new(at);
                Put(table, name, at, new(TomlKind.Table, at, written ?? "[" + name + "]", inner));
            }

            table = inner;
        }

        return table;
    }

    private static TomlTable Append(TomlTable parent, string name, PlanPlace at)
    {
        if (parent[name] is not { } list)
        {
            list = new(TomlKind.List, at, "[[" + name + "]]", new List<TomlValue>());
            Put(parent, name, at, list);
        }

        if (list.Content is not List<TomlValue> items)
        {
            throw Twice(name, at);
        }

        var table = new TomlTable(at);
        items.Add(new(TomlKind.Table, at, list.Written, table));
        return table;
    }

    private static void Put(TomlTable table, string key, PlanPlace at, TomlValue value)
    {
        if (!table.Add(key, at, value))
        {
            throw Twice(key, at);
        }
    }

    private static PlanFileException Twice(string key, PlanPlace at) =>
        new([new(at, key, null, "is given twice; keep one")]);

    private TomlValue Value(ValueSyntax value)
    {
        var (kind, content) = value switch
        {
            StringValueSyntax it => (TomlKind.Text, it.Value ?? ""),
            IntegerValueSyntax it => (TomlKind.Whole, (object)it.Value),
            FloatValueSyntax it => (TomlKind.Number, it.Value),
            BooleanValueSyntax it => (TomlKind.Flag, it.Value),
            DateTimeValueSyntax { Kind: SyntaxKind.LocalDate } it => (
                TomlKind.Date,
                DateOnly.FromDateTime(it.Value.DateTime.DateTime)
            ),
            DateTimeValueSyntax => (TomlKind.Time, null!),
            ArraySyntax it => (TomlKind.List, it.Items.Select(item => Value(item.Value!)).ToList()),
            InlineTableSyntax it => (TomlKind.Table, InlineTable(it)),
            _ => throw new InvalidOperationException($"A TOML value of a new kind: {value.Kind}."),
        };
        return new(kind, Place(value.Span), Written(value.Span), content);
    }

    private TomlTable InlineTable(InlineTableSyntax syntax)
    {
        var table = new TomlTable(Place(syntax.Span));
        Fill(table, syntax.Items.Select(item => item.KeyValue!));
        return table;
    }

    internal static string[] Names(KeySyntax key) =>
        [Name(key.Key!), .. key.DotKeys.Select(item => Name(item.Key!))];

    private static string Name(BareKeyOrStringValueSyntax key) =>
        key switch
        {
            BareKeySyntax bare => bare.Key?.Text ?? "",
            StringValueSyntax quoted => quoted.Value ?? "",
            _ => throw new InvalidOperationException($"A TOML key of a new kind: {key.Kind}."),
        };

    private PlanPlace Place(SourceSpan span) =>
        new(file, span.Start.Line + 1, span.Start.Column + 1);

    private string Written(SourceSpan span)
    {
        var start = Math.Clamp(span.Start.Offset, 0, text.Length);
        var end = Math.Clamp(span.End.Offset + 1, start, text.Length);
        return OneLine(text[start..end]);
    }

    /// <summary>A piece of the file on one line, cut where it is long, without anything that a terminal obeys.</summary>
    internal static string OneLine(string piece)
    {
        var line = string.Join(
            ' ',
            piece.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
        );
        line = string.Concat(
            line.Select(c =>
                char.IsControl(c) || char.GetUnicodeCategory(c) == UnicodeCategory.Format ? '?' : c
            )
        );
        return line.Length <= MostWritten ? line : line[..(MostWritten - 1)] + "…";
    }
}
