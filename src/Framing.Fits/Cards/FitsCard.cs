namespace Framing.Fits;

/// <summary>One header card: 80 characters, and what they say.</summary>
/// <param name="Image">The card as it is stored: 80 characters, one a byte.</param>
/// <param name="Keyword">
/// The keyword without trailing spaces; empty for a blank keyword; for a HIERARCH card "HIERARCH" and the words up to the
/// equals sign.
/// </param>
/// <param name="Value">The value; of kind <see cref="FitsValueKind.None"/> on commentary cards.</param>
/// <param name="Comment">The comment behind the value, or the text of a commentary card.</param>
/// <remarks>Source: FITS Standard 4.0, section 4.1 and 4.2.</remarks>
public sealed record FitsCard(string Image, string Keyword, FitsValue Value, string Comment)
{
    /// <summary>Characters on a card.</summary>
    public const int Length = 80;

    /// <summary>True when the card holds no value but text: COMMENT, HISTORY, a blank keyword or no value indicator.</summary>
    public bool IsCommentary => Value.Kind == FitsValueKind.None;

    /// <summary>The card as it is stored.</summary>
    public override string ToString() => Image.TrimEnd();
}
