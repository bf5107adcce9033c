using Framing.Sky;

namespace Framing.Nights;

/// <summary>When something rises, sets and stands highest.</summary>
/// <remarks>
/// Stars rise and set at an apparent altitude of 0 in the air of the site, the Moon when its upper limb is 34′ below the
/// true horizon (Nautical Almanac). A skyline is in <see cref="StarClear"/> alone.
/// </remarks>
public static class RiseAndSet
{
    /// <summary>The Moon's limb at rise and set, against the true horizon.</summary>
    internal static readonly Angle LimbAtHorizon = Angle.FromArcminutes(-34.0);

    // The teeth of a skyline are narrow: an azimuth changes by a quarter of a degree and more in a minute.
    private static readonly TimeSpan SkylineStep = TimeSpan.FromMinutes(1.0);

    private const double DegreesPerDay = 360.98564736629;

    /// <summary>When a direction is above the horizon.</summary>
    /// <param name="icrs">The ICRS direction of something far away.</param>
    /// <param name="site">The site.</param>
    /// <param name="start">Begin of the time looked at, UTC.</param>
    /// <param name="end">Its end, UTC, later than the begin.</param>
    /// <returns>The stretches by time; none when it stays below.</returns>
    /// <exception cref="ArgumentException">The end does not come after the begin, or a kind is not UTC.</exception>
    public static IReadOnlyList<UtcInterval> StarUp(
        SkyDirection icrs,
        ObservingSite site,
        DateTime start,
        DateTime end
    )
    {
        ArgumentNullException.ThrowIfNull(site);
        return StarAbove(icrs, site, -Refraction.AtApparent(Angle.Zero, site.Air), start, end);
    }

    /// <summary>When a direction is above a true altitude.</summary>
    /// <param name="icrs">The ICRS direction of something far away.</param>
    /// <param name="site">The site.</param>
    /// <param name="trueAltitude">The altitude, without air.</param>
    /// <param name="start">Begin of the time looked at, UTC.</param>
    /// <param name="end">Its end, UTC, later than the begin.</param>
    /// <returns>The stretches by time; none when it stays below.</returns>
    /// <exception cref="ArgumentException">The end does not come after the begin, or a kind is not UTC.</exception>
    public static IReadOnlyList<UtcInterval> StarAbove(
        SkyDirection icrs,
        ObservingSite site,
        Angle trueAltitude,
        DateTime start,
        DateTime end
    )
    {
        return StarAbove(Hours(site, start, end).Follow(icrs), trueAltitude, start, end);
    }

    internal static IReadOnlyList<UtcInterval> StarAbove(
        StarPath path,
        Angle trueAltitude,
        DateTime start,
        DateTime end
    ) => Crossings.Above(utc => (path.TrueAltitude(utc) - trueAltitude).Degrees, start, end);

    /// <summary>When a direction is clear of the site's skyline and above a least altitude, as seen through the air.</summary>
    /// <param name="icrs">The ICRS direction of something far away.</param>
    /// <param name="site">The site with its skyline.</param>
    /// <param name="least">The least apparent altitude, whatever the skyline.</param>
    /// <param name="start">Begin of the time looked at, UTC.</param>
    /// <param name="end">Its end, UTC, later than the begin.</param>
    /// <returns>
    /// The stretches by time, perhaps several in one night; none when it is never clear. A gap or a tooth of the skyline that
    /// it passes in less than a minute may be overlooked.
    /// </returns>
    /// <exception cref="ArgumentException">The end does not come after the begin, or a kind is not UTC.</exception>
    public static IReadOnlyList<UtcInterval> StarClear(
        SkyDirection icrs,
        ObservingSite site,
        Angle least,
        DateTime start,
        DateTime end
    )
    {
        var path = Hours(site, start, end).Follow(icrs);
        return Crossings.Above(utc => path.Clearance(utc, least).Degrees, start, end, SkylineStep);
    }

    /// <summary>When the Moon's upper limb is above the horizon.</summary>
    /// <param name="site">The site.</param>
    /// <param name="start">Begin of the time looked at, UTC.</param>
    /// <param name="end">Its end, UTC, later than the begin.</param>
    /// <returns>The stretches by time; none when it stays below.</returns>
    /// <exception cref="ArgumentException">The end does not come after the begin, or a kind is not UTC.</exception>
    public static IReadOnlyList<UtcInterval> MoonUp(
        ObservingSite site,
        DateTime start,
        DateTime end
    )
    {
        return MoonUp(Hours(site, start, end), start, end);
    }

    internal static IReadOnlyList<UtcInterval> MoonUp(
        SiteHours hours,
        DateTime start,
        DateTime end
    ) => Crossings.Above(utc => MoonOverHorizon(hours, utc), start, end);

    /// <summary>By how many degrees the Moon's upper limb is above the horizon.</summary>
    internal static double MoonOverHorizon(SiteHours hours, DateTime utc)
    {
        var moon = hours.Moon(utc);
        return (moon.Place.TrueAltitude + moon.SemiDiameter - LimbAtHorizon).Degrees;
    }

    /// <summary>When the Sun's centre is below an altitude.</summary>
    /// <param name="site">The site.</param>
    /// <param name="trueAltitude">The altitude without air: -0.833° for sunset, -6°, -12°, -18° for the twilights.</param>
    /// <param name="start">Begin of the time looked at, UTC.</param>
    /// <param name="end">Its end, UTC, later than the begin.</param>
    /// <returns>The stretches by time; none when it stays above.</returns>
    /// <exception cref="ArgumentException">The end does not come after the begin, or a kind is not UTC.</exception>
    public static IReadOnlyList<UtcInterval> SunBelow(
        ObservingSite site,
        Angle trueAltitude,
        DateTime start,
        DateTime end
    )
    {
        return SunBelow(Hours(site, start, end), trueAltitude, start, end);
    }

    internal static IReadOnlyList<UtcInterval> SunBelow(
        SiteHours hours,
        Angle trueAltitude,
        DateTime start,
        DateTime end
    ) => Crossings.Above(utc => (trueAltitude - hours.SunAltitude(utc)).Degrees, start, end);

    /// <summary>The sky of a stretch of time, with the room before and after it that finding crossings needs.</summary>
    internal static SiteHours Hours(ObservingSite site, DateTime start, DateTime end)
    {
        ArgumentNullException.ThrowIfNull(site);
        InOrder(start, end);
        return new(site, start - Crossings.Room, end + Crossings.Room);
    }

    /// <summary>When a direction next stands on the upper meridian.</summary>
    /// <param name="icrs">The ICRS direction of something far away.</param>
    /// <param name="site">The site.</param>
    /// <param name="after">The time from which on to look, UTC.</param>
    /// <returns>The time, within a sidereal day.</returns>
    public static DateTime NextTransit(SkyDirection icrs, ObservingSite site, DateTime after) =>
        NextTransit(utc => SiteMoment.Of(site, utc).See(icrs).HourAngle, after);

    /// <summary>When the Moon next stands on the upper meridian of the observer.</summary>
    /// <param name="site">The site.</param>
    /// <param name="after">The time from which on to look, UTC.</param>
    /// <returns>The time, within 25.5 hours.</returns>
    public static DateTime NextMoonTransit(ObservingSite site, DateTime after) =>
        NextTransit(utc => SiteMoment.Of(site, utc).Moon.Place.HourAngle, after);

    private static DateTime NextTransit(Func<DateTime, Angle> hourAngle, DateTime after)
    {
        var time = after + Turn((-hourAngle(after)).Wrapped);
        for (var i = 0; i < 8; i++)
        {
            var step = Turn((-hourAngle(time)).WrappedSigned);
            time += step;
            if (step.Duration() < TimeSpan.FromMilliseconds(1.0))
            {
                break;
            }
        }

        return time < after ? after : time;
    }

    private static TimeSpan Turn(Angle angle) => TimeSpan.FromDays(angle.Degrees / DegreesPerDay);

    private static void InOrder(DateTime start, DateTime end)
    {
        if (end <= start)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"The end {end:o} does not come after the begin {start:o}."
                ),
                nameof(end)
            );
        }
    }
}
