using Framing.Sky;

namespace Framing.Nights;

/// <summary>The Moon in one night.</summary>
/// <param name="IlluminatedFraction">The lit part of the disc in the middle of the night's dark time, 0 to 1.</param>
/// <param name="Separation">Its distance from the middle of the panels then, topocentric.</param>
/// <param name="Up">When its upper limb is above a flat horizon, from local noon to local noon.</param>
public sealed record NightMoon(
    double IlluminatedFraction,
    Angle Separation,
    IReadOnlyList<UtcInterval> Up
);
