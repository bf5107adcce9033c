using System.Buffers;
using System.Globalization;

namespace Framing.Fits;

/// <summary>Makes canonical cards: fixed format, standard CONTINUE for long strings.</summary>
/// <remarks>Source: FITS Standard 4.0, sections 4.1 and 4.2.</remarks>
internal static class CardWriter
{
    private const int ValueEnd = 30;

    private static readonly SearchValues<char> KeywordCharacters = SearchValues.Create(
        "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_"
    );

    /// <summary>The text of a number: round-trip digits, a decimal point, an upper-case E.</summary>
    public static string Text(double number)
    {
        if (!double.IsFinite(number))
        {
            throw new ArgumentOutOfRangeException(
                nameof(number),
                number,
                "A header card holds finite numbers only."
            );
        }

        var text = number.ToString("R", CultureInfo.InvariantCulture);
        var exponent = text.IndexOf('E', StringComparison.Ordinal);
        return text.Contains('.', StringComparison.Ordinal) ? text
            : exponent < 0 ? $"{text}.0"
            : text.Insert(exponent, ".0");
    }

    /// <summary>A card whose value stands right-justified up to column 30: a number or a logical.</summary>
    public static string Fixed(string keyword, string value, string comment)
    {
        var card = $"{Keyword(keyword)}= {value.PadLeft(ValueEnd - 10)}";
        return Image(WithComment(card, comment));
    }

    /// <summary>The cards of a string, as many as it needs.</summary>
    public static IEnumerable<string> Quoted(string keyword, string text, string comment)
    {
        CheckText(keyword, text);
        var first = $"{Keyword(keyword)}= ";
        var quoted = text.Replace("'", "''", StringComparison.Ordinal);
        if (quoted.Length <= FitsCard.Length - 12)
        {
            yield return Image(WithComment($"{first}'{quoted.PadRight(8)}'", comment));
            yield break;
        }

        // Pieces of at most 67 characters and an ampersand between the quotes; a doubled quote is never cut in two.
        var at = 0;
        while (at < quoted.Length)
        {
            var length = Math.Min(67, quoted.Length - at);
            var isLast = at + length == quoted.Length;
            if (!isLast && QuotesBefore(quoted, at + length) % 2 == 1)
            {
                length--;
            }

            var piece = quoted.Substring(at, length);
            at += length;
            var card = isLast ? WithComment($"{first}'{piece}'", comment) : $"{first}'{piece}&'";
            yield return Image(card);
            first = "CONTINUE  ";
        }
    }

    /// <summary>The cards of a commentary text, as many as it needs.</summary>
    public static IEnumerable<string> Commentary(string keyword, string text)
    {
        CheckText(keyword, text);
        for (var at = 0; at == 0 || at < text.Length; at += FitsCard.Length - 8)
        {
            var length = Math.Min(FitsCard.Length - 8, text.Length - at);
            yield return Image($"{Keyword(keyword)}{text.AsSpan(at, length)}");
        }
    }

    private static int QuotesBefore(string quoted, int place)
    {
        var count = 0;
        while (place - count > 0 && quoted[place - count - 1] == '\'')
        {
            count++;
        }

        return count;
    }

    /// <summary>Comments give way: they are cut where the card ends.</summary>
    private static string WithComment(string card, string comment)
    {
        CheckText("comment", comment);
        var whole = comment.Length == 0 ? card : $"{card.PadRight(ValueEnd)} / {comment}";
        return whole.Length <= FitsCard.Length ? whole
            : card.Length + 4 > FitsCard.Length ? card
            : whole[..FitsCard.Length];
    }

    private static string Keyword(string keyword) =>
        keyword.Length is >= 1 and <= 8 && keyword.AsSpan().IndexOfAnyExcept(KeywordCharacters) < 0
            ? keyword.PadRight(8)
            : throw new ArgumentException(
                $"{keyword} is no FITS keyword: at most 8 of A-Z, 0-9, hyphen and underscore.",
                nameof(keyword)
            );

    private static void CheckText(string what, string text)
    {
        foreach (var character in text)
        {
            if (character is < ' ' or > '~')
            {
                throw new ArgumentException(
                    FormattableString.Invariant(
                        $"The text of {what} holds the character U+{(int)character:X4}; header cards hold printable ASCII only."
                    ),
                    nameof(text)
                );
            }
        }
    }

    private static string Image(string card) => card.PadRight(FitsCard.Length);
}
