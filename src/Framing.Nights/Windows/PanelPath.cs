using Framing.Sky;

namespace Framing.Nights;

/// <summary>One panel through one night: how it stands, and when it can be shot.</summary>
internal sealed class PanelPath
{
    /// <summary>Airmass where the panel is below the horizon and nothing is shot: that at the horizon, about.</summary>
    private const double Thickest = 40.0;

    private readonly NightSky sky;
    private readonly StarPath path;
    private readonly SkyDirection ofDate;
    private readonly IReadOnlyList<UtcInterval> stretches;

    /// <summary>Follows a panel.</summary>
    /// <param name="sky">The night.</param>
    /// <param name="panel">The middle of the panel, ICRS.</param>
    /// <param name="stretches">The dark time in which subs can be shot.</param>
    public PanelPath(NightSky sky, SkyDirection panel, IReadOnlyList<UtcInterval> stretches)
    {
        (this.sky, this.stretches) = (sky, stretches);
        path = sky.Hours.Follow(panel);
        ofDate = sky.Frame.ToOfDate(panel);
    }

    /// <summary>When the mount reaches the panel in the dark.</summary>
    public IReadOnlyList<UtcInterval> Reachable(ReachLimits limits)
    {
        if (
            stretches.Count == 0
            || Math.Abs(ofDate.Declination.Degrees) > limits.DeclinationLimit.Degrees
        )
        {
            return [];
        }

        var skyline = sky.Hours.Site.Horizon;
        var reached = stretches
            .SelectMany(stretch => sky.Where(stretch, utc => limits.Room(skyline, path.At(utc))))
            .ToList();
        return limits.MeridianPause > TimeSpan.Zero
            ? Intervals.Without(reached, Pauses(limits.MeridianPause))
            : reached;
    }

    /// <summary>The parts of stretches in which the Moon allows a filter.</summary>
    public IReadOnlyList<UtcInterval> Moonless(IReadOnlyList<UtcInterval> reached, MoonRule rule) =>
        rule.IsNone
            ? reached
            :
            [
                .. reached.SelectMany(stretch =>
                    sky.Where(
                        stretch,
                        utc =>
                        {
                            var moon = sky.Hours.Moon(utc);
                            return rule.Room(moon, moon.Direction.SeparationTo(ofDate));
                        }
                    )
                ),
            ];

    /// <summary>The airmass at every whole minute of the night from minute 0 to the end of the dark.</summary>
    public double[] Airmass()
    {
        if (stretches.Count == 0)
        {
            return [];
        }

        var first = sky.MinuteBefore(stretches[0].Start);
        var airmass = new double[sky.MinuteAfter(stretches[^1].End) + 1];
        Array.Fill(airmass, Thickest);
        for (var minute = first; minute < airmass.Length; minute++)
        {
            airmass[minute] = path.At(sky.TimeOf(minute)).Airmass ?? Thickest;
        }

        return airmass;
    }

    /// <summary>The apparent altitude.</summary>
    public Angle Altitude(DateTime utc) => path.At(utc).Altitude;

    /// <summary>The lowest and highest apparent altitude between two times, at whole minutes and at the ends.</summary>
    public (Angle Lowest, Angle Highest) Altitudes(DateTime from, DateTime to)
    {
        var (lowest, highest) = (Altitude(from), Altitude(from));
        for (var utc = from; utc < to; )
        {
            utc = utc.AddMinutes(1.0);
            var altitude = Altitude(utc < to ? utc : to);
            (lowest, highest) = (Angle.Min(lowest, altitude), Angle.Max(highest, altitude));
        }

        return (lowest, highest);
    }

    /// <summary>The pauses from each passage of the meridian on; one that began before the dark may reach into it.</summary>
    private List<UtcInterval> Pauses(TimeSpan pause)
    {
        var pauses = new List<UtcInterval>();
        for (var from = stretches[0].Start - pause; ; )
        {
            var passage = RiseAndSet.NextTransit(path.Icrs, sky.Hours.Site, from);
            if (passage >= stretches[^1].End)
            {
                return pauses;
            }

            pauses.Add(new(passage, passage + pause, false, false));
            from = passage.AddMinutes(10.0);
        }
    }
}
