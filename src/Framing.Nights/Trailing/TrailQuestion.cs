using Framing.Sky;

namespace Framing.Nights;

/// <summary>What the length of a trail depends on.</summary>
/// <param name="Rig">Lens and camera.</param>
/// <param name="GuideStar">Where the guide star stands; null without a guider.</param>
/// <param name="PolarError">How far the mount's axis misses the pole.</param>
/// <param name="Declination">Declination of what is shot, the farthest from the equator where there are several.</param>
/// <param name="LimitPx">How far a star may trail in a sub, in (binned) pixels, more than 0.</param>
public sealed record TrailQuestion(
    Rig Rig,
    GuideStar? GuideStar,
    Angle PolarError,
    Angle Declination,
    double LimitPx
);
