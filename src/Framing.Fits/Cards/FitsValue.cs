using System.Globalization;

namespace Framing.Fits;

/// <summary>The value of a header card.</summary>
/// <param name="Kind">What kind of value it is.</param>
/// <param name="Text">The string without its quotes; for every other kind the value as it is written.</param>
/// <remarks><c>default(FitsValue)</c> is no value.</remarks>
public readonly record struct FitsValue(FitsValueKind Kind, string? Text)
{
    /// <summary>True for <c>T</c>.</summary>
    public bool IsTrue => Kind == FitsValueKind.Logical && Text == "T";

    /// <summary>The number the value stands for, or null.</summary>
    /// <remarks>A number inside quotes counts too: cameras write such cards. The exponent may be E or D.</remarks>
    public double? Number =>
        Kind is FitsValueKind.Integer or FitsValueKind.Real or FitsValueKind.Text
            ? ParseNumber(Text)
            : null;

    /// <summary>The whole number the value stands for, or null; 16. and 1.6E1 are 16.</summary>
    public long? Integer
    {
        get
        {
            if (
                Kind is FitsValueKind.Integer or FitsValueKind.Text
                && long.TryParse(
                    Text,
                    NumberStyles.AllowLeadingSign
                        | NumberStyles.AllowLeadingWhite
                        | NumberStyles.AllowTrailingWhite,
                    CultureInfo.InvariantCulture,
                    out var whole
                )
            )
            {
                return whole;
            }

            // Beyond 2^53 a real number no longer tells one whole number from the next.
            return
                Number is { } number
                && double.IsInteger(number)
                && Math.Abs(number) <= 9007199254740992.0
                ? (long)number
                : null;
        }
    }

    internal static double? ParseNumber(string? text)
    {
        if (text is null)
        {
            return null;
        }

        var exponent = text.AsSpan().IndexOfAny('D', 'd');
        var plain =
            exponent < 0
                ? text
                : string.Concat(text.AsSpan(0, exponent), "E", text.AsSpan(exponent + 1));
        return
            double.TryParse(plain, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            && double.IsFinite(number)
            ? number
            : null;
    }
}
