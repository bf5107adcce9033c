using Framing.Nights;
using Framing.Sky;

namespace Framing.Cli.Commands;

/// <summary>How a place of the sky stands to the skyline of a site.</summary>
/// <param name="SkylineAltitude">How high the skyline stands below or before it.</param>
/// <param name="IsClear">True when it stands above.</param>
/// <param name="NextRise">When it next comes over the skyline; null when it does not within a day.</param>
/// <param name="NextSet">When it next goes behind the skyline; null when it does not within a day.</param>
internal sealed record OverSkyline(
    Angle SkylineAltitude,
    bool IsClear,
    DateTime? NextRise,
    DateTime? NextSet
)
{
    public static OverSkyline Of(
        SkyDirection icrs,
        ObservingSite site,
        HorizontalPlace place,
        DateTime start,
        DateTime end
    )
    {
        var lowest = Angle.FromDegrees(-90.0);
        var clear = RiseAndSet.StarClear(icrs, site, lowest, start, end);
        return new(
            site.Horizon.AltitudeAt(place.Azimuth),
            site.Horizon.Clearance(place, lowest) > Angle.Zero,
            OverSite.FirstRise(clear),
            OverSite.FirstSet(clear)
        );
    }
}
