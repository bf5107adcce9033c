using Framing.Sky;

namespace Framing.Nights;

/// <summary>A star that a mount may be aligned on.</summary>
/// <param name="Name">What people call it.</param>
/// <param name="Icrs">Its ICRS direction at the time, its motion applied.</param>
/// <param name="Magnitude">Magnitude in V.</param>
public sealed record BrightStar(string Name, SkyDirection Icrs, double Magnitude);
