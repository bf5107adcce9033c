using Framing.Sky;

namespace Framing.Nights;

/// <summary>Where an observer stands.</summary>
public sealed record ObservingSite
{
    /// <summary>Makes a site.</summary>
    /// <param name="latitude">Geographic latitude (WGS84), -90° to +90°, north positive.</param>
    /// <param name="longitude">Geographic longitude, east positive; whole turns do not matter.</param>
    /// <param name="elevationMetres">Height above the ellipsoid, -500 to 9000 m.</param>
    /// <param name="air">The air there.</param>
    /// <exception cref="ArgumentOutOfRangeException">The latitude or the height is out of its range.</exception>
    public ObservingSite(Angle latitude, Angle longitude, double elevationMetres, AirConditions air)
    {
        ArgumentNullException.ThrowIfNull(air);
        if (Math.Abs(latitude.Degrees) > 90.0 + 1e-12)
        {
            throw new ArgumentOutOfRangeException(
                nameof(latitude),
                latitude.Degrees,
                "A latitude lies between -90 and +90 degrees."
            );
        }

        if (elevationMetres is not (>= -500.0 and <= 9000.0))
        {
            throw new ArgumentOutOfRangeException(
                nameof(elevationMetres),
                elevationMetres,
                "A height lies between -500 and 9000 m."
            );
        }

        Latitude = latitude;
        Longitude = longitude.WrappedSigned;
        ElevationMetres = elevationMetres;
        Air = air;
    }

    /// <summary>Geographic latitude, north positive.</summary>
    public Angle Latitude { get; }

    /// <summary>Geographic longitude, -180° to +180°, east positive.</summary>
    public Angle Longitude { get; }

    /// <summary>Height in m.</summary>
    public double ElevationMetres { get; }

    /// <summary>The air.</summary>
    public AirConditions Air { get; }

    /// <summary>The skyline; flat unless one was measured.</summary>
    public Horizon Horizon { get; init; } = Horizon.Flat;

    /// <summary>
    /// Where the observer stands against the Earth's centre, km: distance from the axis, and height over the equator's
    /// plane (WGS84 ellipsoid: 6378.137 km, flattening 1/298.257223563).
    /// </summary>
    internal (double FromAxis, double OverEquator) FromEarthCentre
    {
        get
        {
            const double equator = 6378.137;
            const double squash = (1.0 - (1.0 / 298.257223563)) * (1.0 - (1.0 / 298.257223563));
            var (sin, cos) = Math.SinCos(Latitude.Radians);
            var curvature = equator / Math.Sqrt((cos * cos) + (squash * sin * sin));
            var height = ElevationMetres / 1000.0;
            return ((curvature + height) * cos, ((curvature * squash) + height) * sin);
        }
    }
}
