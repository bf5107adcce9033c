using Framing.Sky;

namespace Framing.Workshop;

/// <summary>A point of the skyline.</summary>
/// <param name="Azimuth">True azimuth, north 0, east 90°, from 0 (included) to 360° (left out); a compass offset is already added.</param>
/// <param name="Altitude">Altitude as measured (refraction included), -10° to +90°.</param>
public readonly record struct HorizonPoint(Angle Azimuth, Angle Altitude);
