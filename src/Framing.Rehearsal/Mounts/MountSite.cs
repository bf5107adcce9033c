using Framing.Sky;

namespace Framing.Rehearsal;

/// <summary>Where a mount stands, and the air above it.</summary>
/// <param name="Latitude">Geographic latitude, north positive.</param>
/// <param name="Longitude">Geographic longitude, east positive.</param>
/// <param name="PressureHectopascals">Pressure of the air at the site; 0 for none.</param>
/// <param name="TemperatureCelsius">Its temperature.</param>
public readonly record struct MountSite(
    Angle Latitude,
    Angle Longitude,
    double PressureHectopascals = 1010.0,
    double TemperatureCelsius = 10.0
);
