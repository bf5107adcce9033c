namespace Framing.Sky;

/// <summary>Writes right ascension and declination as a person types them into a hand control.</summary>
/// <remarks>
/// Rounded and wrapped as <see cref="CoordinateText"/> does. Minutes and seconds have two digits, hours and degrees as
/// many as they need; a negative declination carries the minus sign U+2212. <see cref="CoordinateReader"/> reads all of it.
/// </remarks>
public static class EntryText
{
    private const int DegreeDecimals = 4;

    /// <summary>Writes a right ascension: "2h 33m 21s", "2h 33.4m" or "38.3375".</summary>
    /// <param name="rightAscension">Right ascension, in the frame that the mount expects; whole turns do not matter.</param>
    /// <param name="format">What the hand control asks for.</param>
    /// <returns>The text.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The format is not one of the three.</exception>
    public static string RightAscension(Angle rightAscension, EntryFormat format)
    {
        switch (format)
        {
            case EntryFormat.HmsDms:
                var fine = Sexagesimal.ToSeconds(rightAscension.Wrapped.Hours, 0);
                return FormattableString.Invariant(
                    $"{fine.Whole % 24}h {fine.Minutes:00}m {fine.Seconds:00}s"
                );
            case EntryFormat.HmDm:
                var coarse = Sexagesimal.ToMinutes(rightAscension.Wrapped.Hours, 1);
                return FormattableString.Invariant(
                    $"{coarse.Whole % 24}h {coarse.Minutes:00}.{coarse.Fraction}m"
                );
            case EntryFormat.Degrees:
                return CoordinateText.RightAscensionDegrees(rightAscension, DegreeDecimals);
            default:
                throw Unknown(format);
        }
    }

    /// <summary>Writes a declination: "+61° 27′ 10″", "+61° 27′" or "+61.4528".</summary>
    /// <param name="declination">Declination, in the frame that the mount expects, north positive.</param>
    /// <param name="format">What the hand control asks for.</param>
    /// <returns>The text.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The format is not one of the three.</exception>
    public static string Declination(Angle declination, EntryFormat format)
    {
        switch (format)
        {
            case EntryFormat.HmsDms:
                var fine = Sexagesimal.ToSeconds(declination.Degrees, 0, 90.0);
                return FormattableString.Invariant(
                    $"{Sign(fine)}{fine.Whole}° {fine.Minutes:00}′ {fine.Seconds:00}″"
                );
            case EntryFormat.HmDm:
                var coarse = Sexagesimal.ToMinutes(declination.Degrees, 0, 90.0);
                return FormattableString.Invariant(
                    $"{Sign(coarse)}{coarse.Whole}° {coarse.Minutes:00}′"
                );
            case EntryFormat.Degrees:
                var degrees = Sexagesimal.ToDecimals(declination.Degrees, DegreeDecimals, 90.0);
                return FormattableString.Invariant(
                    $"{Sign(degrees)}{degrees.Whole}{CoordinateText.Fraction(degrees, DegreeDecimals)}"
                );
            default:
                throw Unknown(format);
        }
    }

    private static char Sign(Sexagesimal parts) => parts.IsNegative ? '\u2212' : '+';

    private static ArgumentOutOfRangeException Unknown(EntryFormat format) =>
        new(nameof(format), format, "An entry format is HmsDms, HmDm or Degrees.");
}
