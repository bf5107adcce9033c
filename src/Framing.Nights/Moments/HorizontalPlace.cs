using Framing.Sky;

namespace Framing.Nights;

/// <summary>A place on the sky as an observer has it before them.</summary>
/// <param name="TrueAltitude">Altitude without air, -90° to +90°.</param>
/// <param name="Altitude">Altitude as seen through the air of the site.</param>
/// <param name="Azimuth">From north (0) through east (90°), from 0 to 360° (left out).</param>
/// <param name="HourAngle">How far past the upper meridian, west positive, -180° to +180°.</param>
/// <param name="ParallacticAngle">The position angle (of date) of the zenith, -180° to +180°: positive west of the meridian.</param>
public readonly record struct HorizontalPlace(
    Angle TrueAltitude,
    Angle Altitude,
    Angle Azimuth,
    Angle HourAngle,
    Angle ParallacticAngle
)
{
    /// <summary>The airmass; null below the horizon.</summary>
    public double? Airmass => Nights.Airmass.At(Altitude);
}
