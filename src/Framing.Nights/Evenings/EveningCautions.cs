using Framing.Sky;

namespace Framing.Nights;

/// <summary>What to beware of in an evening: what, by how much, and what to do; and what holds for every evening.</summary>
internal static class EveningCautions
{
    /// <summary>Fewer pixels than this over a star's disc are coarse, more than <see cref="FineFrom"/> finer than the air: common practice.</summary>
    private const double CoarseBelow = 1.5;

    private const double FineFrom = 4.0;

    public static IReadOnlyList<string> Of(Evening evening)
    {
        var found = new List<string>();
        if (evening.NearestSun < SunCaution.Near)
        {
            found.Add(
                Invariant(
                    $"The Sun stands {evening.NearestSun.Degrees:0}° from a panel, or from the way between two, on this date: never point unfiltered optics there while it is up."
                )
            );
        }

        Trailing(evening.Trailing, found);
        Scales(evening.Sums, found);
        Power(evening, found);
        return found;
    }

    /// <summary>What holds for every evening of this kind.</summary>
    public static IReadOnlyList<string> Reminders(Evening evening)
    {
        var found = new List<string>();
        if (evening.Power is not null)
        {
            found.Add(
                "Power: mains and dew need a residual-current device and dry joints; fuse battery leads at the battery; follow the battery maker's limits and local electrical rules."
            );
        }

        Setup(evening, found);
        return found;
    }

    private static void Trailing(TrailingSums trailing, List<string> found)
    {
        foreach (var sub in trailing.Subs)
        {
            var trail = trailing.IsGuided ? sub.GuidedPx : sub.UnguidedPx;
            if (trail <= trailing.LimitPx || trailing.Used.Longest is not { } longest)
            {
                continue;
            }

            var error = trailing.IsGuided ? sub.ErrorGuided : sub.ErrorUnguided;
            var guiding =
                trailing.IsGuided ? "with the guider"
                : sub.GuidedPx <= trailing.LimitPx
                    ? $"without a guider (with one {Invariant($"{sub.GuidedPx:0.0} px")})"
                : "without a guider";
            found.Add(
                Invariant(
                    $"{sub.Filter}: in a sub of {sub.Sub.TotalSeconds:0.#} s stars trail by up to {trail:0.0} px {guiding}, and {trailing.LimitPx:0.#} px is the limit. Shoot {Whole(longest)} s at most, or bring the mount's axis within {Minutes(error)} of the pole."
                )
            );
        }
    }

    private static void Scales(RigSums sums, List<string> found)
    {
        var across = sums.PixelsPerSeeing;
        if (across >= FineFrom)
        {
            found.Add(
                Invariant(
                    $"Seeing of {sums.Seeing.Arcseconds:0.#}″ spreads a star over {across:0.0} px: the pixels are finer than the air. Binning {Math.Floor(across / 2.0):0} × {Math.Floor(across / 2.0):0} loses nothing."
                )
            );
        }
        else if (across < CoarseBelow / 2.0)
        {
            found.Add(
                Invariant(
                    $"Seeing of {sums.Seeing.Arcseconds:0.#}″ spreads a star over {across:0.0} px: stars will be single pixels. Dither at every sub or two."
                )
            );
        }

        if (sums.GuideErrorPx is { } error and > 1.0)
        {
            found.Add(
                Invariant(
                    $"A guide pixel spans {sums.GuideRatio:0.0} image pixels: guiding sees no error below {error:0.0} px. Use a longer guide lens or smaller guide pixels."
                )
            );
        }
    }

    private static void Power(Evening evening, List<string> found)
    {
        if (evening.Power is not { } power)
        {
            return;
        }

        if (!power.IsEnough)
        {
            found.Add(
                Invariant(
                    $"The battery falls short by {-power.HoursLeft:0.0} h: it lasts {power.HoursAvailable:0.0} h of {power.HoursNeeded:0.0} h. Take {power.NeededWattHours / power.UsableWattHours:0.0} times as much of it, or switch off {Largest(evening.Request.Loads)}."
                )
            );
        }

        if (
            evening.Request is
            { Battery.Chemistry: not BatteryChemistry.LeadAcid, BatteryCelsius: < 0.0 }
        )
        {
            found.Add(
                Invariant(
                    $"The battery stands at {evening.Request.BatteryCelsius:0} °C: do not charge it below 0 °C, and keep it wrapped."
                )
            );
        }
    }

    private static void Setup(Evening evening, List<string> found)
    {
        if (evening.Dark is null)
        {
            return;
        }

        found.Add(
            "Setup: weigh down the tripod, keep the centre of gravity inside its feet, watch cables and that the camera clears the mount's base"
                + (evening.Request.Flips ? "; at the meridian flip stand by." : ".")
        );
        found.Add(
            "Place: know the ground in daylight, tell someone where you are, local access rules apply. Coordinates and times are planning aids, not for navigation or safety of life."
        );
    }

    private static string Largest(IReadOnlyList<PowerLoad> loads) =>
        loads.MaxBy(load => load.Watts * load.Duty)?.Name ?? "a load";

    private static string Whole(TimeSpan time) =>
        Invariant($"{Math.Max(1.0, Math.Floor(time.TotalSeconds)):0}");

    private static string Minutes(Angle error) =>
        error.Arcminutes >= 10.0 ? Invariant($"{Math.Floor(error.Arcminutes):0}′")
        : error.Arcminutes >= 0.1 ? Invariant($"{Math.Floor(error.Arcminutes * 10.0) / 10.0:0.0}′")
        : Invariant($"{error.Arcseconds:0.0}″");

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
