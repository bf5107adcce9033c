using Framing.Catalogue;
using Framing.Nights;
using Framing.Sky;

namespace Framing.Cli.Commands;

/// <summary>One place of the sky at one time, and over a site where there is one.</summary>
/// <param name="Name">Name of what was looked up; null for coordinates.</param>
/// <param name="J2000">Its ICRS direction; of a star that moves, at 2000.0.</param>
/// <param name="OfDate">Its direction against the true equator and equinox of date, a star's motion applied.</param>
/// <param name="Utc">The time.</param>
/// <param name="FromSun">How far it stands from the Sun's centre.</param>
/// <param name="Over">Where it stands over the site; null without one.</param>
internal sealed record WhereAnswer(
    string? Name,
    SkyDirection J2000,
    SkyDirection OfDate,
    DateTime Utc,
    Angle FromSun,
    OverSite? Over
)
{
    /// <summary>What to beware of; null when there is nothing.</summary>
    public string? Caution => SunCaution.Of(FromSun, Over?.Sun.TrueAltitude);

    public static WhereAnswer Of(
        CatalogueEntry? entry,
        SkyDirection direction,
        DateTime utc,
        ObservingSite? site
    )
    {
        var time = TerrestrialTime.FromUtc(utc);
        var now = entry is NamedStar star ? star.Star.At(time.JulianYear) : direction;
        var frame = OfDateFrame.At(time);
        var ofDate = frame.ToOfDate(now);
        return new(
            entry?.Label,
            direction,
            ofDate,
            utc,
            ofDate.SeparationTo(frame.Sun),
            site is null ? null : OverSite.Of(now, site, utc)
        );
    }
}
