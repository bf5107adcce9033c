using Framing.Sky;

namespace Framing.Nights;

/// <summary>How much the air lifts what is seen through it.</summary>
/// <remarks>
/// Good to 0.1′ above 15° and to 0.7′ at the horizon in usual air (against a ray integration); real air near the horizon
/// differs by more than that from night to night.
/// </remarks>
public static class Refraction
{
    // Below this true altitude Saemundsson's formula runs towards its pole at -5.11°.
    private const double LowestDegrees = -1.0;
    private const double NoneDegrees = -5.0;

    /// <summary>The lift at an altitude as it is seen (Bennett 1982, J. Navigation 35, 255).</summary>
    /// <param name="apparent">Apparent altitude, 0 to +90°; lower ones get the lift of the horizon.</param>
    /// <param name="air">The air.</param>
    /// <returns>Apparent minus true altitude, never negative.</returns>
    public static Angle AtApparent(Angle apparent, AirConditions air)
    {
        ArgumentNullException.ThrowIfNull(air);
        var h = Math.Clamp(apparent.Degrees, 0.0, 90.0);
        return Lift(1.0 / Tangent(h + (7.31 / (h + 4.4))), air);
    }

    /// <summary>The lift at an altitude without air (Saemundsson 1986, Sky and Telescope 72, 70).</summary>
    /// <param name="trueAltitude">True altitude, -90° to +90°.</param>
    /// <param name="air">The air.</param>
    /// <returns>
    /// Apparent minus true altitude, never negative. The formula holds down to -1°; from there the lift fades to none at
    /// -5°, so that what is below the horizon has an apparent altitude, too.
    /// </returns>
    public static Angle AtTrue(Angle trueAltitude, AirConditions air)
    {
        ArgumentNullException.ThrowIfNull(air);
        var h = Math.Clamp(trueAltitude.Degrees, LowestDegrees, 90.0);
        var fade = Math.Clamp(
            (trueAltitude.Degrees - NoneDegrees) / (LowestDegrees - NoneDegrees),
            0.0,
            1.0
        );
        return Lift(fade * 1.02 / Tangent(h + (10.3 / (h + 5.11))), air);
    }

    private static Angle Lift(double arcminutes, AirConditions air) =>
        Angle.FromArcminutes(Math.Max(0.0, arcminutes) * air.Strength);

    private static double Tangent(double degrees) => Math.Tan(double.DegreesToRadians(degrees));
}
