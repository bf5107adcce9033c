using Framing.Sky;

namespace Framing.Nights;

/// <summary>A point of the skyline.</summary>
/// <param name="Azimuth">True azimuth, north 0, east 90°.</param>
/// <param name="Altitude">Altitude as measured (refraction included), -90° to +90°.</param>
public readonly record struct HorizonPoint(Angle Azimuth, Angle Altitude);
