using Framing.Sky;

namespace Framing.Planning;

/// <summary>How one axis of a mount obeys its keys.</summary>
/// <param name="Finish">The side from which every move ends.</param>
/// <param name="Backlash">Play of the gear, as an angle on the axis, 0 or more.</param>
/// <param name="RateFactor">True rate over the rate that the label of a speed promises; 1 until it was learned, more than 0.</param>
public sealed record AxisHandling(MountDirection Finish, Angle Backlash, double RateFactor = 1.0);
