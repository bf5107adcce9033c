using Framing.Nights;
using Framing.Planning;

namespace Framing.Workshop;

/// <summary>Turns a plan file and its framing into a request for the nights.</summary>
internal static class NightsMaker
{
    /// <summary>Nights are known from this year on; a plan may be dated earlier.</summary>
    private const int FirstYear = 1902;

    /// <summary>The request; null where the plan names no site or an early date, or there are no panels.</summary>
    public static NightsRequest? Of(PlanFile file, FramedPlan plan, DateOnly evening) =>
        file.Site is not { } site || plan.Panels.Count == 0 || evening.Year < FirstYear
            ? null
            : new()
            {
                Site = site.Observer,
                Clock = site.Clock,
                Evening = evening,
                Nights = file.Night.Nights,
                Darkness = file.Night.Darkness switch
                {
                    Darkness.Civil => DarknessWanted.Civil,
                    Darkness.Nautical => DarknessWanted.Nautical,
                    _ => DarknessWanted.Astronomical,
                },
                Limits = new()
                {
                    MinAltitude = site.MinAltitude,
                    ZenithLimit = file.Mount.ZenithLimit,
                    DeclinationLimit = file.Mount.DeclinationLimit,
                    MeridianPause =
                        file.Mount.Type == MountType.German
                            ? file.Mount.MeridianPause
                            : TimeSpan.Zero,
                },
                Setup = file.Night.Setup,
                Repoint = file.Night.Repoint,
                FocusEvery = file.Night.FocusEvery,
                Focus = file.Night.Focus,
                Flats = file.Night.Flats,
                TurnsCamera = file.Mosaic.TurnCameraAtEachPanel,
                GoalPerPanel = file.Night.GoalPerPanel,
                ExpectedLoss = file.Night.ExpectedLoss,
                Filters =
                [
                    .. file.Night.Filters.Select(filter => new NightFilter(
                        filter.Name,
                        filter.Sub,
                        filter.Readout,
                        filter.DitherEvery,
                        filter.DitherTime,
                        filter.Share,
                        filter.Moon
                    )),
                ],
                Panels = [.. plan.Panels.Select(panel => panel.Centre)],
            };
}
