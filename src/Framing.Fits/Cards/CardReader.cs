using System.Buffers;
using System.Text;

namespace Framing.Fits;

/// <summary>Takes one card apart. Never refuses: what the standard does not know is kept and told of.</summary>
internal static class CardReader
{
    private static readonly UTF8Encoding StrictUtf8 = new(false, true);
    private static readonly SearchValues<char> NumberCharacters = SearchValues.Create(
        "0123456789+-.EeDd"
    );

    /// <summary>Reads a card.</summary>
    /// <param name="image">The card's characters, one a byte; shorter than 80 is filled up with spaces.</param>
    /// <param name="warnings">Takes what is odd about the card.</param>
    public static FitsCard Read(string image, ICollection<string> warnings)
    {
        image = image.Length < FitsCard.Length ? image.PadRight(FitsCard.Length) : image;
        var keyword = image[..8].TrimEnd();
        if (keyword is "COMMENT" or "HISTORY" or "")
        {
            return new(image, keyword, default, Readable(image[8..].TrimEnd()));
        }

        if (keyword == "CONTINUE")
        {
            return WithValue(image, keyword, 8, warnings);
        }

        if (keyword == "HIERARCH" && image[8] == ' ')
        {
            return Hierarch(image, warnings);
        }

        if (image[8] != '=')
        {
            return new(image, keyword, default, Readable(image[8..].TrimEnd()));
        }

        if (image[9] != ' ')
        {
            warnings.Add(
                $"{keyword}: the equals sign is not followed by a space; the value is read all the same."
            );
        }

        return WithValue(image, keyword, 9, warnings);
    }

    /// <summary>Text of a card for people: UTF-8 where the bytes are that, else one character a byte.</summary>
    public static string Readable(string text)
    {
        if (Ascii.IsValid(text))
        {
            return text;
        }

        try
        {
            return StrictUtf8.GetString(Encoding.Latin1.GetBytes(text));
        }
        catch (DecoderFallbackException)
        {
            return text;
        }
    }

    private static FitsCard Hierarch(string image, ICollection<string> warnings)
    {
        var equals = image.IndexOf('=', 9);
        if (equals < 0)
        {
            return new(image, "HIERARCH", default, Readable(image[8..].TrimEnd()));
        }

        var words = image[9..equals].Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return WithValue(image, $"HIERARCH {string.Join(' ', words)}", equals + 1, warnings);
    }

    private static FitsCard WithValue(
        string image,
        string keyword,
        int start,
        ICollection<string> warnings
    )
    {
        while (start < image.Length && image[start] == ' ')
        {
            start++;
        }

        if (start < image.Length && image[start] == '\'')
        {
            return Quoted(image, keyword, start + 1, warnings);
        }

        var slash = image.IndexOf('/', start);
        var written = (slash < 0 ? image[start..] : image[start..slash]).TrimEnd();
        var comment = slash < 0 ? string.Empty : Readable(image[(slash + 1)..].Trim());
        var value = Plain(written);
        if (value.Kind == FitsValueKind.Unreadable)
        {
            warnings.Add(
                $"{keyword}: the value {Readable(written)} is neither a number nor T or F nor text in quotes."
            );
        }

        return new(image, keyword, value, comment);
    }

    private static FitsCard Quoted(
        string image,
        string keyword,
        int start,
        ICollection<string> warnings
    )
    {
        var text = new StringBuilder(FitsCard.Length);
        var at = start;
        var closed = false;
        while (at < image.Length && !closed)
        {
            if (image[at] != '\'')
            {
                text.Append(image[at++]);
            }
            else if (at + 1 < image.Length && image[at + 1] == '\'')
            {
                text.Append('\'');
                at += 2;
            }
            else
            {
                closed = true;
                at++;
            }
        }

        if (!closed)
        {
            warnings.Add(
                $"{keyword}: the text has no closing quote; it is read to the card's end."
            );
        }

        // Spaces at the end of a string carry no meaning, those at its start do (section 4.2.1.1).
        var raw = text.ToString().TrimEnd(' ');
        if (!Ascii.IsValid(raw))
        {
            warnings.Add($"{keyword}: the text holds bytes outside plain ASCII.");
        }

        var slash = image.IndexOf('/', at);
        return new(
            image,
            keyword,
            new(FitsValueKind.Text, Readable(raw)),
            slash < 0 ? string.Empty : Readable(image[(slash + 1)..].Trim())
        );
    }

    private static FitsValue Plain(string written)
    {
        if (written.Length == 0)
        {
            return new(FitsValueKind.Undefined, string.Empty);
        }

        if (written is "T" or "F")
        {
            return new(FitsValueKind.Logical, written);
        }

        if (written[0] == '(')
        {
            return new(FitsValueKind.Complex, written);
        }

        if (FitsValue.ParseNumber(written) is null || !IsNumeric(written))
        {
            return new(FitsValueKind.Unreadable, Readable(written));
        }

        return written.AsSpan().IndexOfAny(".EeDd") < 0
            ? new(FitsValueKind.Integer, written)
            : new(FitsValueKind.Real, written);
    }

    private static bool IsNumeric(string written) =>
        written.AsSpan().IndexOfAnyExcept(NumberCharacters) < 0;
}
