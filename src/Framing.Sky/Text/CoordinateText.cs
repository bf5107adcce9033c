using System.Globalization;

namespace Framing.Sky;

/// <summary>Writes right ascension and declination for machines and tables: fixed width, ASCII, invariant culture.</summary>
/// <remarks>
/// <para>
/// Every form rounds to a whole count of its smallest unit first and splits that: 60 never appears. Right ascension wraps
/// at 24h, declination stops at 90°. The sign is that of the whole value; what rounds to zero is +.
/// </para>
/// <para>Decimals run from 0 to 9; others throw <see cref="ArgumentOutOfRangeException"/>.</para>
/// <para>For what a person types into a hand control see <see cref="EntryText"/>; for the way back <see cref="CoordinateReader"/>.</para>
/// </remarks>
public static class CoordinateText
{
    /// <summary>Hours, minutes and seconds: "05 35 17.3".</summary>
    /// <param name="rightAscension">Right ascension; whole turns do not matter.</param>
    /// <param name="decimals">Decimals of the seconds.</param>
    /// <param name="separator">What stands between the fields.</param>
    /// <returns>The text.</returns>
    public static string RightAscension(
        Angle rightAscension,
        int decimals = 1,
        string separator = " "
    )
    {
        var parts = Sexagesimal.ToSeconds(rightAscension.Wrapped.Hours, decimals);
        return Invariant(
            $"{parts.Whole % 24:00}{separator}{parts.Minutes:00}{separator}{parts.Seconds:00}{Fraction(parts, decimals)}"
        );
    }

    /// <summary>Hours and minutes: "05 35.3".</summary>
    /// <param name="rightAscension">Right ascension; whole turns do not matter.</param>
    /// <param name="decimals">Decimals of the minutes.</param>
    /// <param name="separator">What stands between the fields.</param>
    /// <returns>The text.</returns>
    public static string RightAscensionMinutes(
        Angle rightAscension,
        int decimals = 1,
        string separator = " "
    )
    {
        var parts = Sexagesimal.ToMinutes(rightAscension.Wrapped.Hours, decimals);
        return Invariant(
            $"{parts.Whole % 24:00}{separator}{parts.Minutes:00}{Fraction(parts, decimals)}"
        );
    }

    /// <summary>Decimal degrees, 0 to less than 360: "83.822083".</summary>
    /// <param name="rightAscension">Right ascension; whole turns do not matter.</param>
    /// <param name="decimals">Decimals of the degrees.</param>
    /// <returns>The text.</returns>
    public static string RightAscensionDegrees(Angle rightAscension, int decimals = 6)
    {
        var parts = Sexagesimal.ToDecimals(rightAscension.Wrapped.Degrees, decimals);
        return Invariant($"{parts.Whole % 360}{Fraction(parts, decimals)}");
    }

    /// <summary>Sign, degrees, minutes and seconds: "-05 23 28".</summary>
    /// <param name="declination">Declination, north positive.</param>
    /// <param name="decimals">Decimals of the seconds.</param>
    /// <param name="separator">What stands between the fields.</param>
    /// <returns>The text.</returns>
    public static string Declination(Angle declination, int decimals = 0, string separator = " ")
    {
        var parts = Sexagesimal.ToSeconds(declination.Degrees, decimals, 90.0);
        return Invariant(
            $"{Sign(parts)}{parts.Whole:00}{separator}{parts.Minutes:00}{separator}{parts.Seconds:00}{Fraction(parts, decimals)}"
        );
    }

    /// <summary>Sign, degrees and minutes: "-05 23".</summary>
    /// <param name="declination">Declination, north positive.</param>
    /// <param name="decimals">Decimals of the minutes.</param>
    /// <param name="separator">What stands between the fields.</param>
    /// <returns>The text.</returns>
    public static string DeclinationMinutes(
        Angle declination,
        int decimals = 0,
        string separator = " "
    )
    {
        var parts = Sexagesimal.ToMinutes(declination.Degrees, decimals, 90.0);
        return Invariant(
            $"{Sign(parts)}{parts.Whole:00}{separator}{parts.Minutes:00}{Fraction(parts, decimals)}"
        );
    }

    /// <summary>Sign and decimal degrees: "-5.391111".</summary>
    /// <param name="declination">Declination, north positive.</param>
    /// <param name="decimals">Decimals of the degrees.</param>
    /// <returns>The text.</returns>
    public static string DeclinationDegrees(Angle declination, int decimals = 6)
    {
        var parts = Sexagesimal.ToDecimals(declination.Degrees, decimals, 90.0);
        return Invariant($"{Sign(parts)}{parts.Whole}{Fraction(parts, decimals)}");
    }

    /// <summary>The decimals with their point; nothing where there are none.</summary>
    internal static string Fraction(Sexagesimal parts, int decimals) =>
        decimals == 0
            ? ""
            : "."
                + parts.Fraction.ToString(
                    "D" + decimals.ToString(CultureInfo.InvariantCulture),
                    CultureInfo.InvariantCulture
                );

    private static char Sign(Sexagesimal parts) => parts.IsNegative ? '-' : '+';

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
