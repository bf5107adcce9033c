namespace Framing.Sky;

/// <summary>A direction in galactic coordinates.</summary>
/// <param name="Longitude">Galactic longitude l: 0 towards the centre of the Milky Way, growing towards Cygnus (90°).</param>
/// <param name="Latitude">Galactic latitude b, -90° to +90°: 0 along the plane of the Milky Way, north positive.</param>
/// <remarks>
/// <see cref="GalacticFrame"/> goes between these and ICRS. <c>default</c> is the origin of the frame, which is a direction
/// like any other.
/// </remarks>
public readonly record struct GalacticCoordinates(Angle Longitude, Angle Latitude);
