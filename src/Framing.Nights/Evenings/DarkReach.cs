using Framing.Sky;

namespace Framing.Nights;

/// <summary>When something is clear of the skyline in the dark, and how high it then stands.</summary>
/// <param name="Stretches">The stretches by time; none when it never is.</param>
/// <param name="Best">When it stands highest in them, UTC; the begin of the dark time when it never is clear.</param>
/// <param name="Highest">Where it stands then.</param>
/// <param name="Lowest">Its lowest apparent altitude in the stretches; null when there are none.</param>
public sealed record DarkReach(
    IReadOnlyList<UtcInterval> Stretches,
    DateTime Best,
    HorizontalPlace Highest,
    Angle? Lowest
)
{
    // Between samples the clearance is taken as even: an edge is off by less than 5 s but at the teeth of a skyline.
    private static readonly TimeSpan Step = TimeSpan.FromMinutes(2.0);

    /// <summary>All stretches together.</summary>
    public TimeSpan Length =>
        Stretches.Aggregate(TimeSpan.Zero, (sum, stretch) => sum + stretch.Length);

    /// <summary>Follows something through the dark.</summary>
    /// <param name="path">Its way over the sky of the site, known through all of the dark time.</param>
    /// <param name="dark">The dark time, one stretch or more.</param>
    /// <param name="least">The least apparent altitude, whatever the skyline.</param>
    /// <returns>When it can be shot, sampled every two minutes.</returns>
    /// <exception cref="ArgumentException">There is no dark time.</exception>
    public static DarkReach Of(StarPath path, IReadOnlyList<UtcInterval> dark, Angle least)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(dark);
        if (dark.Count == 0)
        {
            throw new ArgumentException("There is no dark time to look at.", nameof(dark));
        }

        var found = new List<UtcInterval>();
        var (best, highest) = (dark[0].Start, path.At(dark[0].Start));
        var top = Angle.FromDegrees(-91.0);
        Angle? lowest = null;
        foreach (var stretch in dark)
        {
            var count = Math.Max(1, (int)Math.Ceiling(stretch.Length / Step));
            var (before, beforeTime) = (double.NaN, stretch.Start);
            DateTime? open = null;
            for (var i = 0; i <= count; i++)
            {
                var time =
                    i == count ? stretch.End : stretch.Start + (i * (stretch.Length / count));
                var place = path.At(time);
                var now = path.Site.Horizon.Clearance(place, least).Degrees;
                if (now > 0.0)
                {
                    open ??= i == 0 ? time : Between(beforeTime, time, before, now);
                    lowest = lowest is { } low ? Angle.Min(low, place.Altitude) : place.Altitude;
                    if (place.Altitude > top)
                    {
                        (best, highest, top) = (time, place, place.Altitude);
                    }
                }
                else if (open is { } start)
                {
                    found.Add(new(start, Between(beforeTime, time, before, now), false, false));
                    open = null;
                }

                (before, beforeTime) = (now, time);
            }

            if (open is { } last)
            {
                found.Add(new(last, stretch.End, HeldBefore: false, HoldsAfter: true));
            }
        }

        return new(found, best, highest, lowest);
    }

    private static DateTime Between(DateTime from, DateTime to, double atFrom, double atTo) =>
        from + ((to - from) * (atFrom / (atFrom - atTo)));
}
