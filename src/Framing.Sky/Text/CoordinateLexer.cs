using System.Globalization;

namespace Framing.Sky;

/// <summary>Takes the text of a coordinate apart into its numbers.</summary>
internal ref struct CoordinateLexer
{
    private readonly string text;
    private readonly bool commaIsDecimal;
    private int at;

    private CoordinateLexer(string text, bool commaIsDecimal)
    {
        this.text = text;
        this.commaIsDecimal = commaIsDecimal;
    }

    /// <summary>Takes a text apart.</summary>
    /// <param name="text">The text.</param>
    /// <param name="commaIsDecimal">True where a comma between digits is a decimal comma.</param>
    /// <param name="fields">The numbers found, in order.</param>
    /// <returns>Null, or what is wrong.</returns>
    public static string? Split(string text, bool commaIsDecimal, out List<CoordinateField> fields)
    {
        var lexer = new CoordinateLexer(text, commaIsDecimal);
        fields = [];
        return lexer.ReadAll(fields);
    }

    /// <summary>A text as a message shows it: in quotes, on one line, not endless.</summary>
    /// <param name="text">Any text.</param>
    public static string Quote(string text)
    {
        const int most = 40;
        var shown = text.Length > most ? text[..most] + "..." : text;
        return "\""
            + string.Concat(shown.Select(c => char.IsControl(c) || char.IsSurrogate(c) ? ' ' : c))
            + "\"";
    }

    /// <summary>A number as a message names it: without spaces or line breaks inside, not endless.</summary>
    private static string Compact(string field)
    {
        const int most = 20;
        var shown = string.Concat(field.Where(c => !char.IsWhiteSpace(c)));
        return shown.Length > most ? shown[..most] + "..." : shown;
    }

    private string? ReadAll(List<CoordinateField> fields)
    {
        while (true)
        {
            SkipSpace();
            var joined = fields.Count > 0 && Take(':');
            SkipSpace();
            if (at == text.Length)
            {
                return joined ? "a number is missing after the last colon" : null;
            }

            // "1.2.3" is no two numbers.
            if (
                fields.Count > 0
                && fields[^1].End == at
                && fields[^1].Mark == FieldMark.None
                && text[at] is '.' or ','
            )
            {
                return Unexpected();
            }

            var start = at;
            var sign = TakeSign();
            if (joined && sign != '\0')
            {
                return "a sign stands after a colon";
            }

            SkipSpace();
            var number = TakeNumber(out var hasDecimals);
            if (number.Length == 0)
            {
                return sign == '\0' ? Unexpected() : "a number is missing after the sign";
            }

            var mark = TakeMark();
            fields.Add(
                new(
                    Compact(text[start..at]),
                    double.Parse(
                        number,
                        NumberStyles.AllowDecimalPoint,
                        CultureInfo.InvariantCulture
                    ),
                    sign,
                    mark,
                    hasDecimals,
                    joined,
                    start,
                    at
                )
            );
        }
    }

    private void SkipSpace()
    {
        while (at < text.Length && char.IsWhiteSpace(text[at]))
        {
            at++;
        }
    }

    private bool Take(char wanted)
    {
        if (at < text.Length && text[at] == wanted)
        {
            at++;
            return true;
        }

        return false;
    }

    private char TakeSign()
    {
        if (Take('+'))
        {
            return '+';
        }

        // The hyphen of the keyboard and the minus sign of print.
        return Take('-') || Take('\u2212') ? '-' : '\0';
    }

    private string TakeNumber(out bool hasDecimals)
    {
        var start = at;
        hasDecimals = false;
        var digits = 0;
        while (at < text.Length)
        {
            var c = text[at];
            if (char.IsAsciiDigit(c))
            {
                digits++;
            }
            else if (!hasDecimals && (c == '.' || (commaIsDecimal && c == ',')))
            {
                hasDecimals = true;
            }
            else
            {
                break;
            }

            at++;
        }

        if (digits == 0)
        {
            at = start;
            return "";
        }

        return text[start..at].Replace(',', '.');
    }

    private FieldMark TakeMark()
    {
        var before = at;
        SkipSpace();
        var mark = at < text.Length ? MarkAt(out _) : FieldMark.None;
        if (mark == FieldMark.None)
        {
            at = before;
            return mark;
        }

        MarkAt(out var length);
        at += length;
        return mark;
    }

    private readonly FieldMark MarkAt(out int length)
    {
        length = 1;
        switch (text[at])
        {
            case 'h' or 'H':
                return FieldMark.Hours;
            case 'd' or 'D':
                var rest = text.AsSpan(at);
                length = rest.StartsWith("deg", StringComparison.OrdinalIgnoreCase) ? 3 : 1;
                return FieldMark.Degrees;
            case '°' or 'º':
                return FieldMark.Degrees;
            case 'm' or 'M':
                return FieldMark.Minutes;
            case 's' or 'S':
                return FieldMark.Seconds;
            case '\'' when at + 1 < text.Length && text[at + 1] == '\'':
                length = 2;
                return FieldMark.ArcSeconds;
            case '\'' or '\u2032' or '\u2019':
                return FieldMark.ArcMinutes;
            case '"' or '\u2033' or '\u201D':
                return FieldMark.ArcSeconds;
            default:
                return FieldMark.None;
        }
    }

    private readonly string Unexpected()
    {
        var end = at + 1;
        if (char.IsLetter(text[at]))
        {
            while (end < text.Length && char.IsLetter(text[end]))
            {
                end++;
            }
        }

        var found = Quote(text[at..end]);
        return text[at] == ','
            ? "a comma marks decimals only where spaces part the numbers; write a point"
            : $"{found} is not a number";
    }
}
