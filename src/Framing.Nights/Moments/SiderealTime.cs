using Framing.Sky;

namespace Framing.Nights;

/// <summary>How far the Earth has turned against the stars. UT1 is taken as UTC: at most 0.9 s, 13″, by which the sky is ahead or behind.</summary>
/// <remarks>
/// Earth rotation angle: IAU 2000 resolution B1.8. The polynomial: Capitaine, Wallace and Chapront, Astron. Astrophys. 412,
/// 567 (2003). Against ERFA 2.0.0 (gmst06, gst06a) within 0.002″.
/// </remarks>
public static class SiderealTime
{
    private static readonly DateTime J2000 = new(2000, 1, 1, 12, 0, 0, DateTimeKind.Utc);

    /// <summary>Greenwich mean sidereal time: the hour angle of the mean equinox of date at longitude 0.</summary>
    /// <param name="utc">The time; its kind must be UTC.</param>
    /// <returns>The angle, from 0 (included) to 360° (left out).</returns>
    /// <exception cref="ArgumentException">The kind is not UTC.</exception>
    public static Angle GreenwichMean(DateTime utc)
    {
        return Angle.FromRadians(MeanRadians(utc)).Wrapped;
    }

    /// <summary>The same as <see cref="GreenwichMean"/> in radians, not wrapped.</summary>
    internal static double MeanRadians(DateTime utc)
    {
        var t = TerrestrialTime.FromUtc(utc).CenturiesSinceJ2000;
        var (days, rest) = Math.DivRem(utc.Ticks - J2000.Ticks, TimeSpan.TicksPerDay);
        var fraction = (double)rest / TimeSpan.TicksPerDay;
        var turns = 0.7790572732640 + fraction + (0.00273781191135448 * (days + fraction));
        var precession =
            0.014506
            + (t * (4612.156534 + (t * (1.3915817 + (t * (-0.00000044 - (t * 0.000029956)))))));
        return ((turns - Math.Floor(turns)) * Math.Tau)
            + (precession * (Math.PI / (180.0 * 3600.0)));
    }

    /// <summary>Greenwich apparent sidereal time: the hour angle of the true equinox of date at longitude 0.</summary>
    /// <param name="utc">The time; its kind must be UTC.</param>
    /// <param name="frame">The frame of the same time.</param>
    /// <returns>The angle, from 0 (included) to 360° (left out).</returns>
    /// <exception cref="ArgumentException">The kind is not UTC.</exception>
    public static Angle GreenwichApparent(DateTime utc, OfDateFrame frame)
    {
        ArgumentNullException.ThrowIfNull(frame);
        return (GreenwichMean(utc) + EquationOfEquinoxes(frame)).Wrapped;
    }

    /// <summary>Apparent minus mean sidereal time.</summary>
    internal static Angle EquationOfEquinoxes(OfDateFrame frame)
    {
        // The two largest of the complementary terms (IERS Conventions 2003, table 5.2e).
        var node = Angle.FromDegrees(125.04455501 - (1934.136261 * frame.Time.CenturiesSinceJ2000));
        var complement = Angle.FromArcseconds(
            (0.00264096 * Math.Sin(node.Radians)) + (0.00006352 * Math.Sin(2.0 * node.Radians))
        );
        return (frame.NutationInLongitude * Math.Cos(frame.Obliquity.Radians)) + complement;
    }
}
