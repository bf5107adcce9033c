using Framing.Nights;
using Framing.Sky;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>The Moon over a site, and what it does to a place of the sky.</summary>
/// <param name="Sight">The Moon as seen from there.</param>
/// <param name="Phase">Its phase.</param>
/// <param name="Separation">How far it stands from the place.</param>
/// <param name="Light">How much it brightens the sky at the place.</param>
internal sealed record MoonOverSite(
    MoonSight Sight,
    MoonPhase Phase,
    Angle Separation,
    Moonlight Light
)
{
    /// <summary>The moonless sky that the light is held against, magnitudes in a square second of arc.</summary>
    public const double DarkSky = PlanDefaults.SkyMagnitudePerArcsec2;

    public static MoonOverSite Of(SiteMoment moment, SkyDirection icrs)
    {
        var sight = moment.Moon;
        var separation = moment.Frame.ToOfDate(icrs).SeparationTo(sight.Direction);
        return new(
            sight,
            MoonPhase.At(moment.Frame),
            separation,
            Moonlight.At(sight, moment.See(icrs), separation, DarkSky)
        );
    }
}
