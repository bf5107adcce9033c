using Framing.Nights;
using Framing.Sky;

namespace Framing.Cli.Commands;

/// <summary>Where a place of the sky stands over a site, and what it does next.</summary>
/// <param name="Place">Where it stands.</param>
/// <param name="NextTransit">When it next stands on the upper meridian.</param>
/// <param name="HighestPlace">Where it stands then.</param>
/// <param name="NextRise">When it next rises over a flat horizon; null when it never does.</param>
/// <param name="NextSet">When it next sets behind a flat horizon; null when it never does.</param>
/// <param name="Skyline">The same over the site's skyline; null when it has none.</param>
/// <param name="Sun">Where the Sun stands.</param>
/// <param name="Night">The night that it is, or by day the one that comes.</param>
/// <param name="Moon">The Moon and its light.</param>
internal sealed record OverSite(
    HorizontalPlace Place,
    DateTime NextTransit,
    HorizontalPlace HighestPlace,
    DateTime? NextRise,
    DateTime? NextSet,
    OverSkyline? Skyline,
    HorizontalPlace Sun,
    NightOfSun Night,
    MoonOverSite Moon
)
{
    // A sidereal day and a bit: whatever rises and sets does both in it.
    private static readonly TimeSpan Ahead = TimeSpan.FromHours(24.1);

    public static OverSite Of(SkyDirection icrs, ObservingSite site, DateTime utc)
    {
        var transit = RiseAndSet.NextTransit(icrs, site, utc);
        var up = RiseAndSet.StarUp(icrs, site, utc, utc + Ahead);
        var moment = SiteMoment.Of(site, utc);
        var place = moment.See(icrs);
        return new(
            place,
            transit,
            SiteMoment.Of(site, transit).See(icrs),
            FirstRise(up),
            FirstSet(up),
            site.Horizon.IsFlat ? null : OverSkyline.Of(icrs, site, place, utc, utc + Ahead),
            moment.Sun,
            NightAt(site, utc),
            MoonOverSite.Of(moment, icrs)
        );
    }

    /// <summary>The night that it is, or by day the one that comes.</summary>
    private static NightOfSun NightAt(ObservingSite site, DateTime utc)
    {
        var evening = NightOfSun.EveningOf(site.Longitude, utc);
        var night = NightOfSun.Of(site, evening);
        return night.SunDown is [.., { HoldsAfter: false, End: var sunrise }] && sunrise < utc
            ? NightOfSun.Of(site, evening.AddDays(1))
            : night;
    }

    public static DateTime? FirstRise(IReadOnlyList<UtcInterval> up) =>
        up.Where(stretch => !stretch.HeldBefore)
            .Select(stretch => (DateTime?)stretch.Start)
            .FirstOrDefault();

    public static DateTime? FirstSet(IReadOnlyList<UtcInterval> up) =>
        up.Where(stretch => !stretch.HoldsAfter)
            .Select(stretch => (DateTime?)stretch.End)
            .FirstOrDefault();
}
