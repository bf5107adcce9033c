using Framing.Catalogue;
using Framing.Nights;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Works out what goes beside a framing for its evening: sums, what to type, where to align.</summary>
internal static class EveningMaker
{
    private const int FirstYear = 1902;

    private static readonly TimeOnly Usual = new(18, 0);

    public static EveningNotes Of(PlanFile file, FramedPlan plan, DateOnly date)
    {
        // Nights are known from 1902 on; a plan may be dated earlier.
        var isKnown = date.Year >= FirstYear;
        var request = Request(file, plan, date);
        var evening = Evening.Of(isKnown ? request : request with { Site = null });
        if (file.Site is not { } site || evening.Dark is not { } dark)
        {
            return new(evening, SiteClock.Utc, null, null);
        }

        var from = evening.Session.From ?? site.Clock.FirstMoment(date.ToDateTime(Usual));
        return new(
            evening,
            site.Clock,
            SwitchOn.Of(site.Clock, file.Mount.DateOrder, site.Observer, from, dark.Night.End),
            Alignment(file, site, dark.Night, from)
        );
    }

    private static EveningRequest Request(PlanFile file, FramedPlan plan, DateOnly date)
    {
        var night = file.Night;
        var power = file.Power;
        return new()
        {
            Rig = file.Rig,
            GuideStar = file.Guide?.Star,
            GuideScale = file.Guide?.Scale,
            Panels = [.. plan.Panels.Select(panel => panel.Centre)],
            Site = file.Site?.Observer,
            LeastAltitude = file.Site?.MinAltitude ?? Angle.Zero,
            Evening = date,
            SunBelow = SunBelow(night.Darkness),
            Setup = night.Setup,
            Repoint = night.Repoint,
            Flats = night.Flats,
            GoalPerPanel = night.GoalPerPanel,
            ExpectedLoss = night.ExpectedLoss,
            Subs =
            [
                .. night.Filters.Select(filter => new SubWish(
                    filter.Name,
                    filter.Sub,
                    filter.Readout,
                    filter.DitherEvery,
                    filter.DitherTime,
                    filter.Share
                )),
            ],
            PolarError = file.Mount.PolarError,
            TrailLimitPx = night.TrailLimitPx,
            Seeing = file.Sky.Seeing,
            Flips = file.Mount.Type == MountType.German,
            Battery = power is null
                ? null
                : new(
                    power.BatteryWattHours,
                    power.Chemistry,
                    power.UsableFraction,
                    power.SpareFraction,
                    ConverterEfficiency: 1.0
                ),
            Loads = power?.Loads ?? [],
            BatteryCelsius = file.Site?.TemperatureCelsius ?? PlanDefaults.TemperatureCelsius(0.0),
        };
    }

    internal static Angle SunBelow(Darkness darkness) =>
        Angle.FromDegrees(
            darkness switch
            {
                Darkness.Civil => -6.0,
                Darkness.Nautical => -12.0,
                _ => -18.0,
            }
        );

    private static AlignmentNotes Alignment(
        PlanFile file,
        SiteSection site,
        NightOfSun night,
        DateTime from
    )
    {
        var at = AlignmentTime(night) ?? from + (file.Night.Setup / 2.0);
        var moment = SiteMoment.Of(site.Observer, at);
        var usual = new AlignmentLimits();
        var limits = usual with
        {
            Lowest = Angle.Max(usual.Lowest, site.MinAltitude),
            Highest = Angle.Min(usual.Highest, Angle.FromDegrees(90.0) - file.Mount.ZenithLimit),
            FarthestDeclination = Angle.Min(usual.FarthestDeclination, file.Mount.DeclinationLimit),
        };
        var bright = night.BelowCivil.Count == 0 ? [] : Stars(limits.Faintest, at);
        return new(at, AlignmentChoice.Of(moment, bright, limits));
    }

    /// <summary>Between the ends of civil and of nautical twilight: bright stars are out, and it is early yet.</summary>
    private static DateTime? AlignmentTime(NightOfSun night) =>
        night.BelowCivil is [{ HeldBefore: false } civil, ..]
            ? night.BelowNautical is [{ HeldBefore: false } nautical, ..]
                ? civil.Start + ((nautical.Start - civil.Start) / 2.0)
                : civil.Start + (civil.Length / 2.0)
            : null;

    internal static IEnumerable<BrightStar> Stars(double faintest, DateTime at)
    {
        var year = TerrestrialTime.FromUtc(at).JulianYear;
        var selection = new StarSelection { FaintestMagnitude = faintest, JulianYear = year };
        return StarCatalogue
            .Embedded.InCone(
                SkyDirection.FromDegrees(0.0, 90.0),
                Angle.FromDegrees(180.0),
                selection
            )
            .Select(star => (Star: star, Name: NameOf(star)))
            .Where(star => star.Name is not null)
            .Select(star => new BrightStar(star.Name!, star.Star.At(year), star.Star.VMagnitude));
    }

    private static string? NameOf(CatalogueStar star) =>
        star.Hipparcos is { } number ? StarCatalogue.NameOf(number)?.Label : null;
}
