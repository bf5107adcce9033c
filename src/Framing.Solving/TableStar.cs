using Framing.Sky;

namespace Framing.Solving;

/// <summary>A star of a table that somebody brings.</summary>
/// <param name="Direction">Its place, ICRS, at 2000.0 where a motion is given; otherwise at the date of the frame.</param>
/// <param name="Magnitude">Its brightness, smaller is brighter; any band that orders the stars as the frame does.</param>
/// <param name="Motion">Its motion; null if unknown.</param>
public readonly record struct TableStar(
    SkyDirection Direction,
    double Magnitude,
    ProperMotion? Motion = null
);
