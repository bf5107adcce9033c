using Framing.Sky;

namespace Framing.Nights;

/// <summary>How far the Sun is.</summary>
/// <remarks>Astronomical Almanac, low-precision formula (section C): within 0.0002 au of ERFA 2.0.0 (epv00), 1990–2060.</remarks>
public static class SunDistance
{
    /// <summary>The distance between the centres of Earth and Sun.</summary>
    /// <param name="time">The time.</param>
    /// <returns>Astronomical units.</returns>
    public static double AstronomicalUnits(TerrestrialTime time)
    {
        var anomaly = Angle.FromDegrees(357.528 + (0.9856003 * time.DaysSinceJ2000)).Radians;
        return 1.00014 - (0.01671 * Math.Cos(anomaly)) - (0.00014 * Math.Cos(2.0 * anomaly));
    }
}
