using Framing.Sky;

namespace Framing.Nights;

/// <summary>One night on its way into a plan.</summary>
internal sealed class NightMaker
{
    private readonly NightsRequest request;
    private readonly NightSky sky;
    private readonly PanelPath[] paths;
    private readonly IReadOnlyList<UtcInterval>[] reachable;
    private readonly DarknessWanted darkness;
    private readonly IReadOnlyList<UtcInterval> dark;
    private readonly IReadOnlyList<UtcInterval> usable;

    public NightMaker(NightsRequest request, DateOnly evening)
    {
        this.request = request;
        sky = new(request.Site, evening);
        var sun = sky.Sun;
        darkness = request.Darkness;
        dark = Below(sun, darkness);
        if (dark.Count == 0 && darkness == DarknessWanted.Astronomical)
        {
            (darkness, dark) = (DarknessWanted.Nautical, sun.BelowNautical);
        }

        usable = Usable(sun, dark, request.Setup);
        paths = [.. request.Panels.Select(panel => new PanelPath(sky, panel, usable))];
        reachable = [.. paths.Select(path => path.Reachable(request.Limits))];
    }

    public double[] Airmass(int panel) => paths[panel].Airmass();

    /// <summary>When a panel can be shot through a filter, in milliseconds of the night.</summary>
    public TimeSpanMs[] Windows(int panel, int filter) =>
        [
            .. paths[panel]
                .Moonless(reachable[panel], request.Filters[filter].Moon)
                .Select(window => new TimeSpanMs(
                    (int)Math.Ceiling((window.Start - sky.Epoch).TotalMilliseconds),
                    (int)Math.Floor((window.End - sky.Epoch).TotalMilliseconds)
                ))
                .Where(window => window.From < window.To),
        ];

    public PlannedNight With(
        IReadOnlyList<ScheduledBlock> blocks,
        ScheduleProblem problem,
        int night
    )
    {
        var made = blocks.Select(block => Block(block, problem, night)).ToArray();
        var planned = new PlannedNight
        {
            Sun = sky.Sun,
            Darkness = darkness,
            Dark = dark,
            Usable = usable,
            Moon = new(0.0, Angle.Zero, []),
            Reachable = reachable,
            Highest = [.. paths.Select(Highest)],
            Blocks = made,
            Flats =
                made.Length > 0 && request.Flats > TimeSpan.Zero
                    ? new UtcInterval(made[^1].To, made[^1].To + request.Flats, false, false)
                    : null,
        };
        return planned with { Moon = Moon(planned.Middle) };
    }

    private Angle? Highest(PanelPath path) =>
        usable.Count == 0
            ? null
            : usable
                .Select(stretch => path.Altitudes(stretch.Start, stretch.End).Highest)
                .MaxBy(altitude => altitude.Radians);

    private NightBlock Block(ScheduledBlock block, ScheduleProblem problem, int night)
    {
        var task = problem.Tasks[block.Task];
        var from = sky.TimeOf(block.Minute);
        var to = from.AddMilliseconds(task.Cadence.Exposed(block.Subs));
        var (lowest, highest) = paths[task.Panel].Altitudes(from, to);
        return new(
            task.Panel + 1,
            request.Filters[task.Filter],
            from,
            to,
            block.Subs,
            request.ExpectedGood(block.Subs),
            lowest,
            highest,
            task.Airmass(night, block.Minute, block.Subs) / block.Subs
        );
    }

    private NightMoon Moon(DateTime middle)
    {
        var moon = sky.Hours.Moon(middle);
        var sum = default(Vector3D);
        foreach (var panel in request.Panels)
        {
            sum += panel.Vector;
        }

        var away =
            sum.Length > 1e-9
                ? moon.Direction.SeparationTo(sky.Frame.ToOfDate(SkyDirection.FromVector(sum)))
                : Angle.Zero;
        return new(
            moon.IlluminatedFraction,
            away,
            RiseAndSet.MoonUp(request.Site, sky.Sun.Start, sky.Sun.End)
        );
    }

    private static IReadOnlyList<UtcInterval> Below(NightOfSun sun, DarknessWanted darkness) =>
        darkness switch
        {
            DarknessWanted.Astronomical => sun.Dark,
            DarknessWanted.Nautical => sun.BelowNautical,
            DarknessWanted.Civil => sun.BelowCivil,
            _ => throw new ArgumentOutOfRangeException(
                nameof(darkness),
                darkness,
                "There is no such darkness."
            ),
        };

    /// <summary>The dark time after setting up: setting up begins at each sunset, or where the Sun is down at noon already, then.</summary>
    private static IReadOnlyList<UtcInterval> Usable(
        NightOfSun sun,
        IReadOnlyList<UtcInterval> dark,
        TimeSpan setup
    )
    {
        var ready = sun
            .SunDown.Where(down => down.Start + setup < down.End)
            .Select(down => down with { Start = down.Start + setup, HeldBefore = false })
            .ToList();
        return Intervals.Both(dark, ready);
    }
}
