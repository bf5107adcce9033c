using Framing.Sky;

namespace Framing.Rehearsal;

/// <summary>A nebula that is made up: a round patch of threads and knots, the same on every frame that shows it.</summary>
/// <param name="Centre">Its middle, ICRS.</param>
/// <param name="Radius">Where it has faded to a third.</param>
/// <param name="Strength">Its brightness over that of the empty sky, in its bright parts.</param>
public readonly record struct NebulaGlow(SkyDirection Centre, Angle Radius, double Strength);
