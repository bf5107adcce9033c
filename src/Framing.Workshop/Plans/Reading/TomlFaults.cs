using System.Globalization;
using System.Text.RegularExpressions;
using Tomlyn.Syntax;

namespace Framing.Workshop;

/// <summary>Says in plain words what makes a text no TOML.</summary>
internal static partial class TomlFaults
{
    /// <summary>The first fault of a document. Those after it mostly follow from it.</summary>
    public static PlanFileError First(string file, string text, DocumentSyntax document)
    {
        var fault = document
            .Diagnostics.Where(entry => entry.Kind == DiagnosticMessageKind.Error)
            .MinBy(entry => (entry.Span.Start.Line, entry.Span.Start.Column))!;
        var at = new PlanPlace(file, fault.Span.Start.Line + 1, fault.Span.Start.Column + 1);
        if (Twice().Match(fault.Message) is { Success: true } twice)
        {
            var first = twice.Groups["line"].Value;
            return new(
                at,
                twice.Groups["key"].Value,
                null,
                $"is given twice, first in line {first}; keep one"
            );
        }

        var line = Line(text, fault.Span.Start.Line);
        if (fault.Message.Contains("Unable to parse the date", StringComparison.Ordinal))
        {
            var (key, value) = Parted(line);
            key = TableAt(document, fault.Span.Start) + key;
            return new(
                at,
                key,
                value,
                "there is no such date; write year-month-day, such as 2026-12-05"
            );
        }

        // An unclosed bracket is found at the end of the file, where there is nothing to show.
        var shown =
            line.Length == 0
                ? "the text ends too early"
                : $"\"{TomlTree.OneLine(line)}\" is no TOML";
        return new(at, "", null, $"{shown}; {Advice(fault.Message)}");
    }

    /// <summary>The table that a place lies in, with its dot; nothing at the top of the file.</summary>
    private static string TableAt(DocumentSyntax document, TextPosition place)
    {
        var header = document.Tables.LastOrDefault(table =>
            table.Span.Start.Offset <= place.Offset
        );
        return header is null ? "" : $"{header.Name}".Trim() + ".";
    }

    private static string Advice(string message) =>
        message switch
        {
            _ when Has(message, "`True`")
                    || Has(message, "`False`")
                    || Has(message, "`TRUE`")
                    || Has(message, "`FALSE`") => "true and false are written in small letters",
            _ when Has(message, "found `,`") => "a number has a decimal point, no comma",
            _ when Has(message, "escape character") || Has(message, "Unicode scalar") =>
                "a backslash in a text is written twice, or the text stands in single quotes",
            _ when Has(message, "newline in a string")
                    || Has(message, "End-Of-File found on string") =>
                "a text in quotes ends on its own line",
            _ when Has(message, "end-of-line found while expecting a value") =>
                "a value is missing after the =",
            _ when Has(message, "closing `]`")
                    || Has(message, "expecting `]`")
                    || Has(message, "closebracket") => "a [ is not closed by a ]",
            _ when Has(message, "expecting token `newline`") || Has(message, "for a value") =>
                "a number stands alone without its unit, a text in \"double quotes\", and each line holds one key",
            _ when Has(message, "leading zero") => "a number does not start with a zero",
            _ when Has(message, "Unable to parse integer") => "the number is too long",
            _ when Has(message, "`=` after a key") || Has(message, "Unexpected token [") =>
                "a line is a [table], or a key = value, the key in plain letters, digits, _ and -",
            _ when Has(message, "ontrol character") || Has(message, "\\r not followed") =>
                "it holds a character that does not belong into a text file",
            _ => Plain(message),
        };

    private static bool Has(string message, string piece) =>
        message.Contains(piece, StringComparison.Ordinal);

    private static string Plain(string message)
    {
        var plain = message
            .Replace('`', '\'')
            .Replace("␤", "end of line", StringComparison.Ordinal);
        return TomlTree.OneLine(char.ToLower(plain[0], CultureInfo.InvariantCulture) + plain[1..]);
    }

    private static string Line(string text, int index)
    {
        var lines = text.Split('\n');
        return index < lines.Length ? lines[index].Trim() : "";
    }

    private static (string Key, string Value) Parted(string line)
    {
        var sign = line.IndexOf('=', StringComparison.Ordinal);
        var value = sign < 0 ? line : line[(sign + 1)..];
        var comment = value.IndexOf('#', StringComparison.Ordinal);
        value = comment < 0 ? value : value[..comment];
        return (sign < 0 ? "date" : TomlTree.OneLine(line[..sign]), TomlTree.OneLine(value));
    }

    [GeneratedRegex(
        @"The key `(?<key>[^`]*)` is already defined at \((?<line>\d+),\d+\)",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Twice();
}
