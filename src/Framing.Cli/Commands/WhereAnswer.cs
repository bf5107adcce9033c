using Framing.Catalogue;
using Framing.Nights;
using Framing.Sky;

namespace Framing.Cli.Commands;

/// <summary>One place of the sky at one time, and over a site where there is one.</summary>
/// <param name="Name">Name of what was looked up; null for coordinates.</param>
/// <param name="J2000">Its ICRS direction; of a star that moves, at 2000.0.</param>
/// <param name="OfDate">Its direction against the true equator and equinox of date, a star's motion applied.</param>
/// <param name="Utc">The time.</param>
/// <param name="Over">Where it stands over the site; null without one.</param>
internal sealed record WhereAnswer(
    string? Name,
    SkyDirection J2000,
    SkyDirection OfDate,
    DateTime Utc,
    OverSite? Over
)
{
    public static WhereAnswer Of(
        CatalogueEntry? entry,
        SkyDirection direction,
        DateTime utc,
        ObservingSite? site
    )
    {
        var time = TerrestrialTime.FromUtc(utc);
        var now = entry is NamedStar star ? star.Star.At(time.JulianYear) : direction;
        return new(
            entry?.Label,
            direction,
            OfDateFrame.At(time).ToOfDate(now),
            utc,
            site is null ? null : OverSite.Of(now, site, utc)
        );
    }
}
