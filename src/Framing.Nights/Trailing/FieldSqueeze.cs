using Framing.Sky;

namespace Framing.Nights;

/// <summary>How the air squeezes a field of view.</summary>
/// <param name="Vertical">By how much an upright extent looks shorter than it is.</param>
/// <param name="Horizontal">By how much a level extent of the same size does.</param>
/// <remarks>
/// Upright: the lower edge is lifted more than the upper one (Saemundsson's refraction, within 4 % of a ray integration at
/// 30°). Level: places at both ends are lifted towards the same zenith.
/// </remarks>
public readonly record struct FieldSqueeze(Angle Vertical, Angle Horizontal)
{
    /// <summary>The squeeze of a field.</summary>
    /// <param name="trueAltitude">True altitude of its middle, above half of its extent.</param>
    /// <param name="extent">How far it reaches, both upright and level.</param>
    /// <param name="air">The air.</param>
    /// <returns>The squeeze.</returns>
    public static FieldSqueeze Of(Angle trueAltitude, Angle extent, AirConditions air)
    {
        var half = extent / 2.0;
        var low = Refraction.AtTrue(trueAltitude - half, air);
        var high = Refraction.AtTrue(trueAltitude + half, air);
        var lift = Refraction.AtTrue(trueAltitude, air);
        var level =
            1.0 - (Math.Cos((trueAltitude + lift).Radians) / Math.Cos(trueAltitude.Radians));
        return new(low - high, extent * level);
    }
}
