using Framing.Catalogue;
using Framing.Nights;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Finds what fits a rig in a night.</summary>
public static class TonightJob
{
    /// <summary>More frames than this are no matter of one evening's whim.</summary>
    private const int MostFrames = 4;

    /// <summary>What fills less of the frame's short side is a detail.</summary>
    private const double LeastPart = 1.0 / 6.0;

    // Two entries closer than this part of their size, and of much the same size, are the same cloud.
    private const double SamePlace = 0.15;
    private const double SameSize = 0.7;

    private const int FirstYear = 1902;

    private static readonly TimeSpan LeastTime = TimeSpan.FromMinutes(30.0);

    /// <summary>The evening that a moment belongs to, or by day the one that comes.</summary>
    /// <param name="site">The site.</param>
    /// <param name="utc">The moment, UTC.</param>
    /// <returns>The date of the evening.</returns>
    public static DateOnly EveningAt(SiteSection site, DateTime utc)
    {
        ArgumentNullException.ThrowIfNull(site);
        var evening = NightOfSun.EveningOf(site.Longitude, utc);
        var night = NightOfSun.Of(site.Observer, evening);
        return night.SunDown is [.., { HoldsAfter: false, End: var sunrise }] && sunrise < utc
            ? evening.AddDays(1)
            : evening;
    }

    /// <summary>Does the job.</summary>
    /// <param name="rig">Lens and camera.</param>
    /// <param name="site">The site.</param>
    /// <param name="evening">The evening's date.</param>
    /// <returns>What fits: 1 to 4 frames, clear of the skyline in the dark for half an hour or longer.</returns>
    /// <exception cref="InputException">The date is before 1902 or after 2100.</exception>
    public static TonightAnswer Run(Rig rig, SiteSection site, DateOnly evening)
    {
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(site);
        if (evening.Year is < FirstYear or > 2100)
        {
            throw new InputException(
                FormattableString.Invariant(
                    $"tonight: {evening:yyyy-MM-dd}: nights are known from {FirstYear} to 2100."
                )
            );
        }

        var observer = site.Observer;
        var night = NightOfSun.Of(observer, evening);
        var dark = DarkTime.Of(night, EveningMaker.SunBelow(Darkness.Astronomical));
        var midnight = OfDateFrame.At(TerrestrialTime.FromUtc(night.Start.AddHours(12.0)));
        var things = new List<TonightThing>();
        if (dark.Stretches.Count > 0)
        {
            var hours = new SiteHours(observer, night.Start, night.End);
            foreach (var (thing, fit) in Fitting(rig))
            {
                var path = hours.Follow(thing.MiddleOfExtent);
                var reach = DarkReach.Of(path, dark.Stretches, site.MinAltitude);
                if (reach.Length >= LeastTime)
                {
                    var moon = hours.Moon(reach.Best).Direction;
                    var here = midnight.ToOfDate(thing.MiddleOfExtent);
                    things.Add(new(thing, fit, reach, here.SeparationTo(moon)));
                }
            }
        }

        return new(
            rig,
            site,
            dark,
            MoonPhase.At(midnight),
            RiseAndSet.MoonUp(observer, night.Start, night.End),
            [
                .. things
                    .OrderByDescending(thing => Math.Round(thing.Reach.Length.TotalHours, 1))
                    .ThenBy(thing => thing.Thing.Name is null)
                    .ThenByDescending(thing => thing.Thing.Major!.Value.Radians)
                    .ThenBy(thing => thing.Thing.Id, StringComparer.Ordinal),
            ]
        );
    }

    private static List<(DeepSkyObject Thing, FrameFit Fit)> Fitting(Rig rig)
    {
        var field = rig.Field;
        var smallest = Angle.Min(field.Width, field.Height) * LeastPart;
        var selection = new ObjectSelection { SmallestMajor = smallest };
        var margin = PlanDefaults.Margin * 2.0;
        var found = new List<(DeepSkyObject Thing, FrameFit Fit)>();
        foreach (
            var thing in ObjectCatalogue
                .Embedded.InCone(
                    SkyDirection.FromDegrees(0.0, 90.0),
                    Angle.FromDegrees(180.0),
                    selection
                )
                .Where(IsWorthNaming)
                .OrderBy(thing => thing.Name is null)
        )
        {
            var fit = FrameFit.Of(thing.Major!.Value + margin, Minor(thing) + margin, field);
            if (fit.Frames <= MostFrames && !found.Exists(other => IsSame(other.Thing, thing)))
            {
                found.Add((thing, fit));
            }
        }

        return found;
    }

    /// <summary>The width of a thing; as wide as it is long where no width is known.</summary>
    /// <param name="thing">A thing whose length is known.</param>
    /// <returns>The width.</returns>
    public static Angle Minor(DeepSkyObject thing) =>
        (thing ?? throw new ArgumentNullException(nameof(thing))).Minor ?? thing.Major!.Value;

    /// <summary>The long lists of Lynds' clouds overlap each other and everything else: only the named ones help.</summary>
    private static bool IsWorthNaming(DeepSkyObject thing) =>
        thing.Name is not null
        || !(
            thing.Id.StartsWith("LBN", StringComparison.Ordinal)
            || thing.Id.StartsWith("LDN", StringComparison.Ordinal)
        );

    private static bool IsSame(DeepSkyObject one, DeepSkyObject other)
    {
        var (large, small) = (
            Angle.Max(one.Major!.Value, other.Major!.Value),
            Angle.Min(one.Major!.Value, other.Major!.Value)
        );
        return small >= large * SameSize
            && one.MiddleOfExtent.SeparationTo(other.MiddleOfExtent) <= large * SamePlace;
    }
}
