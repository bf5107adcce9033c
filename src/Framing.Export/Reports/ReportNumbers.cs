namespace Framing.Export;

/// <summary>
/// Rounds what a report prints: far below any error that matters on the sky, and above the last bits in which machines
/// may differ.
/// </summary>
internal static class ReportNumbers
{
    /// <summary>Degrees with 9 decimals: 3.6 µas.</summary>
    public static double Degrees(double degrees) =>
        Tidy(Math.Round(degrees, 9, MidpointRounding.AwayFromZero));

    /// <summary>Right ascension or position angle in degrees, 0 to less than 360 after rounding.</summary>
    public static double Turn(double degrees)
    {
        var rounded = Degrees(degrees);
        return rounded >= 360.0 ? 0.0 : rounded;
    }

    /// <summary>Minutes of arc, square degrees and fractions with 6 decimals.</summary>
    public static double Fine(double value) =>
        Tidy(Math.Round(value, 6, MidpointRounding.AwayFromZero));

    private static double Tidy(double value) => value == 0.0 ? 0.0 : value;
}
