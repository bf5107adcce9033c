using Framing.Sky;

namespace Framing.Nights;

/// <summary>The sky over a site in one night, counted in whole minutes UTC from local mean noon on.</summary>
internal sealed class NightSky
{
    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1.0);
    private static readonly TimeSpan Fine = TimeSpan.FromSeconds(0.1);

    public NightSky(ObservingSite site, DateOnly evening)
    {
        Sun = NightOfSun.Of(site, evening);
        Epoch = new(
            Sun.Start.Ticks / TimeSpan.TicksPerMinute * TimeSpan.TicksPerMinute,
            DateTimeKind.Utc
        );
        Hours = new(site, Epoch, Sun.End + Minute);
        Frame = OfDateFrame.At(TerrestrialTime.FromUtc(Sun.Start.AddHours(12.0)));
    }

    public NightOfSun Sun { get; }

    public SiteHours Hours { get; }

    /// <summary>The frame of date in the middle of the night; within the night directions of date move by less than 1″.</summary>
    public OfDateFrame Frame { get; }

    /// <summary>The whole minute at or before local mean noon, UTC: minute 0.</summary>
    public DateTime Epoch { get; }

    public DateTime TimeOf(int minute) => Epoch.AddMinutes(minute);

    /// <summary>The last whole minute at or before a time.</summary>
    public int MinuteBefore(DateTime utc) => (int)Math.Floor((utc - Epoch) / Minute);

    /// <summary>The first whole minute at or after a time.</summary>
    public int MinuteAfter(DateTime utc) => (int)Math.Ceiling((utc - Epoch) / Minute);

    /// <summary>The parts of a stretch in which something has room: looked at every whole minute, the edges halved to 0.1 s.</summary>
    /// <param name="stretch">The stretch.</param>
    /// <param name="room">More than 0 where it has room.</param>
    /// <returns>The parts by time; never more than what has room at its edges.</returns>
    public IReadOnlyList<UtcInterval> Where(UtcInterval stretch, Func<DateTime, double> room)
    {
        var found = new List<UtcInterval>();
        var last = MinuteBefore(stretch.End);
        var before = stretch.Start;
        var holds = room(before) > 0.0;
        UtcInterval? open = holds ? stretch : null;
        for (var minute = MinuteAfter(stretch.Start); minute <= last + 1; minute++)
        {
            var now = minute <= last ? TimeOf(minute) : stretch.End;
            if (room(now) > 0.0 != holds)
            {
                var edge = Edge(before, now, holds, room);
                if (open is { } ending)
                {
                    found.Add(ending with { End = edge, HoldsAfter = false });
                    open = null;
                }
                else
                {
                    open = stretch with { Start = edge, HeldBefore = false };
                }

                holds = !holds;
            }

            before = now;
        }

        if (open is { } rest && rest.Start < rest.End)
        {
            found.Add(rest);
        }

        return found;
    }

    /// <summary>Where room begins or ends; the side that has room, so that nothing of a window lies outside.</summary>
    private static DateTime Edge(
        DateTime low,
        DateTime high,
        bool lowHolds,
        Func<DateTime, double> room
    )
    {
        while (high - low > Fine)
        {
            var middle = low + ((high - low) / 2.0);
            if (room(middle) > 0.0 == lowHolds)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return lowHolds ? low : high;
    }
}
