using System.Globalization;
using System.Text;

namespace Framing.Fits;

/// <summary>Collects cards for a new header. Every card is canonical: fixed format, printable ASCII.</summary>
/// <remarks>The cards that say what the data are (SIMPLE, BITPIX, NAXIS, BZERO, END, ...) come from the writer of the file.</remarks>
public sealed class FitsHeaderBuilder
{
    private readonly List<string> images = [];

    /// <summary>The cards so far, 80 characters each.</summary>
    public IReadOnlyList<string> Images => images;

    /// <summary>Adds a string; longer ones run on over CONTINUE cards.</summary>
    /// <param name="keyword">The keyword: at most 8 of A–Z, 0–9, hyphen, underscore.</param>
    /// <param name="value">Printable ASCII.</param>
    /// <param name="comment">A comment, cut where the card ends.</param>
    /// <returns>This builder.</returns>
    /// <exception cref="ArgumentException">The keyword or a character is not allowed.</exception>
    public FitsHeaderBuilder Add(string keyword, string value, string comment = "")
    {
        ArgumentNullException.ThrowIfNull(keyword);
        ArgumentNullException.ThrowIfNull(value);
        images.AddRange(CardWriter.Quoted(keyword, value, comment));
        return this;
    }

    /// <summary>Adds a number, with as many digits as bring it back exactly.</summary>
    /// <param name="keyword">The keyword.</param>
    /// <param name="value">A finite number.</param>
    /// <param name="comment">A comment.</param>
    /// <returns>This builder.</returns>
    /// <exception cref="ArgumentException">The keyword is not allowed, or the number is not finite.</exception>
    public FitsHeaderBuilder Add(string keyword, double value, string comment = "")
    {
        ArgumentNullException.ThrowIfNull(keyword);
        images.Add(CardWriter.Fixed(keyword, CardWriter.Text(value), comment));
        return this;
    }

    /// <summary>Adds a whole number.</summary>
    /// <param name="keyword">The keyword.</param>
    /// <param name="value">The number.</param>
    /// <param name="comment">A comment.</param>
    /// <returns>This builder.</returns>
    /// <exception cref="ArgumentException">The keyword is not allowed.</exception>
    public FitsHeaderBuilder Add(string keyword, long value, string comment = "")
    {
        ArgumentNullException.ThrowIfNull(keyword);
        images.Add(
            CardWriter.Fixed(keyword, value.ToString(CultureInfo.InvariantCulture), comment)
        );
        return this;
    }

    /// <summary>Adds a number as it is written here.</summary>
    internal FitsHeaderBuilder AddFixed(string keyword, string value, string comment = "")
    {
        images.Add(CardWriter.Fixed(keyword, value, comment));
        return this;
    }

    /// <summary>Adds a truth value.</summary>
    /// <param name="keyword">The keyword.</param>
    /// <param name="value">The value.</param>
    /// <param name="comment">A comment.</param>
    /// <returns>This builder.</returns>
    /// <exception cref="ArgumentException">The keyword is not allowed.</exception>
    public FitsHeaderBuilder Add(string keyword, bool value, string comment = "")
    {
        ArgumentNullException.ThrowIfNull(keyword);
        images.Add(CardWriter.Fixed(keyword, value ? "T" : "F", comment));
        return this;
    }

    /// <summary>Adds COMMENT cards.</summary>
    /// <param name="text">Printable ASCII; longer texts take several cards.</param>
    /// <returns>This builder.</returns>
    /// <exception cref="ArgumentException">A character is not allowed.</exception>
    public FitsHeaderBuilder AddComment(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        images.AddRange(CardWriter.Commentary("COMMENT", text));
        return this;
    }

    /// <summary>The cards as a text with one card a line, as it stands beside a picture; END is its last line.</summary>
    /// <returns>The text.</returns>
    public string ToText()
    {
        var text = new StringBuilder();
        foreach (var image in images)
        {
            text.Append(image.TrimEnd()).Append('\n');
        }

        return text.Append("END\n").ToString();
    }

    /// <summary>The cards as a header.</summary>
    /// <returns>The header.</returns>
    public FitsHeader ToHeader()
    {
        var warnings = new List<string>();
        return new(images.ConvertAll(image => CardReader.Read(image, warnings)), warnings);
    }
}
