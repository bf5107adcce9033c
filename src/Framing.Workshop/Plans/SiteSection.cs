using Framing.Nights;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Where the observer stands: [site].</summary>
public sealed record SiteSection
{
    /// <summary>Geographic latitude, north positive.</summary>
    public required Angle Latitude { get; init; }

    /// <summary>Geographic longitude, -180° to +180°, east positive.</summary>
    public required Angle Longitude { get; init; }

    /// <summary>Height above the sea in m.</summary>
    public required double ElevationMetres { get; init; }

    /// <summary>Name of the time zone in the IANA database.</summary>
    public required string TimeZone { get; init; }

    /// <summary>The skyline, azimuths made true; flat when the plan gives none.</summary>
    public required Horizon Horizon { get; init; }

    /// <summary>Nothing is shot below this altitude, whatever the skyline.</summary>
    public required Angle MinAltitude { get; init; }

    /// <summary>Air pressure at the site in hPa (not reduced to the sea).</summary>
    public required double PressureHectopascals { get; init; }

    /// <summary>Air temperature in °C.</summary>
    public required double TemperatureCelsius { get; init; }

    /// <summary>The clock at the site.</summary>
    public SiteClock Clock => SiteClock.Find(TimeZone) ?? SiteClock.Utc;

    /// <summary>The site as the rules of the night take it, with its air and skyline.</summary>
    public ObservingSite Observer =>
        new(Latitude, Longitude, ElevationMetres, new(PressureHectopascals, TemperatureCelsius))
        {
            Horizon = Horizon,
        };
}
