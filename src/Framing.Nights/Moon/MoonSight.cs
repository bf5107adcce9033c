using Framing.Sky;

namespace Framing.Nights;

/// <summary>The Moon as an observer sees it, parallax and all.</summary>
/// <param name="Place">Where its centre stands.</param>
/// <param name="Direction">Direction of its centre from the observer, against the true equator and equinox of date.</param>
/// <param name="DistanceKilometres">Distance of its centre from the observer, km.</param>
/// <param name="IlluminatedFraction">The lit part of the disc, 0 (new) to 1 (full), as from the Earth's centre.</param>
public readonly record struct MoonSight(
    HorizontalPlace Place,
    SkyDirection Direction,
    double DistanceKilometres,
    double IlluminatedFraction
)
{
    // Radius of the Moon 0.272481 Earth radii (IAU 1982, k; Explanatory Supplement 1992) of 6378.1366 km.
    private const double RadiusKilometres = 0.272481 * 6378.1366;

    /// <summary>Half the apparent diameter, 14.7′ to 16.8′.</summary>
    public Angle SemiDiameter =>
        Angle.FromRadians(Math.Asin(Math.Min(1.0, RadiusKilometres / DistanceKilometres)));
}
