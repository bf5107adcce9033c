using Framing.Nights;
using Framing.Sky;

namespace Framing.Cli.Commands;

/// <summary>Where a place of the sky stands over a site, and what it does next.</summary>
/// <param name="Place">Where it stands.</param>
/// <param name="NextTransit">When it next stands on the upper meridian.</param>
/// <param name="HighestPlace">Where it stands then.</param>
/// <param name="NextRise">When it next rises; null when it never does.</param>
/// <param name="NextSet">When it next sets; null when it never does.</param>
internal sealed record OverSite(
    HorizontalPlace Place,
    DateTime NextTransit,
    HorizontalPlace HighestPlace,
    DateTime? NextRise,
    DateTime? NextSet
)
{
    // A sidereal day and a bit: whatever rises and sets does both in it.
    private static readonly TimeSpan Ahead = TimeSpan.FromHours(24.1);

    public static OverSite Of(SkyDirection icrs, ObservingSite site, DateTime utc)
    {
        var transit = RiseAndSet.NextTransit(icrs, site, utc);
        var up = RiseAndSet.StarUp(icrs, site, utc, utc + Ahead);
        var rises = up.Where(stretch => !stretch.HeldBefore).ToList();
        var sets = up.Where(stretch => !stretch.HoldsAfter).ToList();
        return new(
            SiteMoment.Of(site, utc).See(icrs),
            transit,
            SiteMoment.Of(site, transit).See(icrs),
            rises.Count > 0 ? rises[0].Start : null,
            sets.Count > 0 ? sets[0].End : null
        );
    }
}
