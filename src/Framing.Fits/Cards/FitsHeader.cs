using System.Globalization;
using System.Text;

namespace Framing.Fits;

/// <summary>The cards of one header, in their order, and a way to ask for values.</summary>
/// <remarks>
/// <para>Immutable. Where a keyword stands more than once the first one counts, and a warning says so.</para>
/// <para>Strings that run on over CONTINUE cards are given whole (FITS Standard 4.0, section 4.2.1.2).</para>
/// </remarks>
public sealed class FitsHeader
{
    private readonly Dictionary<string, FitsCard> byKeyword = new(StringComparer.Ordinal);
    private readonly List<string> warnings;

    internal FitsHeader(IReadOnlyList<FitsCard> cards, IEnumerable<string> warnings)
    {
        Cards = cards;
        this.warnings = [.. warnings];
        Index();
    }

    /// <summary>A header without cards.</summary>
    public static FitsHeader Empty { get; } = new([], []);

    /// <summary>All cards in their order, END left out.</summary>
    public IReadOnlyList<FitsCard> Cards { get; }

    /// <summary>What is odd about the cards, one line each; nothing that keeps them from being read.</summary>
    public IReadOnlyList<string> Warnings => warnings;

    /// <summary>The card of a keyword.</summary>
    /// <param name="keyword">The keyword in capitals, without spaces at its end.</param>
    /// <returns>The first card of that keyword, its long string made whole; null when there is none.</returns>
    public FitsCard? Find(string keyword) => byKeyword.GetValueOrDefault(keyword);

    /// <summary>True when a keyword stands in the header with a value or an undefined value.</summary>
    /// <param name="keyword">The keyword in capitals.</param>
    /// <returns>True when it is there.</returns>
    public bool Has(string keyword) => byKeyword.ContainsKey(keyword);

    /// <summary>The text of a keyword; also of one that forgot its quotes.</summary>
    /// <param name="keyword">The keyword in capitals.</param>
    /// <returns>The text without spaces at its end, or null when there is none.</returns>
    public string? Text(string keyword) =>
        Find(keyword)?.Value is { Kind: not (FitsValueKind.None or FitsValueKind.Undefined) } value
            ? value.Text
            : null;

    /// <summary>The number of a keyword.</summary>
    /// <param name="keyword">The keyword in capitals.</param>
    /// <returns>A finite number, or null when there is none.</returns>
    public double? Number(string keyword) => Find(keyword)?.Value.Number;

    /// <summary>The whole number of a keyword.</summary>
    /// <param name="keyword">The keyword in capitals.</param>
    /// <returns>The number, or null when there is none or it has a fraction.</returns>
    public long? Integer(string keyword) => Find(keyword)?.Value.Integer;

    /// <summary>The truth value of a keyword.</summary>
    /// <param name="keyword">The keyword in capitals.</param>
    /// <returns>True for T, false for F, null when there is none.</returns>
    public bool? Logical(string keyword) =>
        Find(keyword)?.Value is { Kind: FitsValueKind.Logical } value ? value.IsTrue : null;

    internal static string Numbered(string name, int number) =>
        string.Create(CultureInfo.InvariantCulture, $"{name}{number}");

    private void Index()
    {
        var repeated = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < Cards.Count; i++)
        {
            var card = Cards[i];
            if (card.IsCommentary || card.Keyword == "CONTINUE")
            {
                continue;
            }

            var whole = Whole(i);
            if (
                !byKeyword.TryAdd(card.Keyword, whole)
                && byKeyword[card.Keyword].Value != whole.Value
                && repeated.Add(card.Keyword)
            )
            {
                warnings.Add(
                    $"{card.Keyword}: stands more than once with different values; the first is used."
                );
            }
        }
    }

    /// <summary>The card at a place with the text of the CONTINUE cards behind it.</summary>
    private FitsCard Whole(int place)
    {
        var card = Cards[place];
        if (!RunsOn(card.Value) || !Continues(place + 1))
        {
            return card;
        }

        var text = new StringBuilder(card.Value.Text);
        var comment = new StringBuilder(card.Comment);
        for (var next = place + 1; Continues(next) && text.Length > 0 && text[^1] == '&'; next++)
        {
            text.Length--;
            text.Append(Cards[next].Value.Text);
            comment.Append(Cards[next].Comment);
        }

        return card with
        {
            Value = new(FitsValueKind.Text, text.ToString()),
            Comment = comment.ToString(),
        };
    }

    private static bool RunsOn(FitsValue value) =>
        value.Kind == FitsValueKind.Text && value.Text?.EndsWith('&') == true;

    private bool Continues(int place) =>
        place < Cards.Count
        && Cards[place] is { Keyword: "CONTINUE", Value.Kind: FitsValueKind.Text };
}
