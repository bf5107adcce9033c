using System.Globalization;
using NodaTime;

namespace Framing.Nights;

/// <summary>The clock at a site: what it shows at a moment, which moments a time on it means, when it is set.</summary>
/// <remarks>
/// Rules of the IANA time zone database as NodaTime carries them, so that every machine gives the same times. Years 1901 to
/// 2199.
/// </remarks>
public sealed class SiteClock
{
    private static readonly TimeSpan HalfMinute = TimeSpan.FromSeconds(30.0);

    private readonly DateTimeZone zone;

    private SiteClock(DateTimeZone zone) => this.zone = zone;

    /// <summary>A clock that shows UTC.</summary>
    public static SiteClock Utc { get; } = new(DateTimeZone.Utc);

    /// <summary>Every name that <see cref="Find"/> knows.</summary>
    public static IReadOnlyCollection<string> ZoneNames => DateTimeZoneProviders.Tzdb.Ids;

    /// <summary>The name of its zone.</summary>
    public string ZoneName => zone.Id;

    /// <summary>True when it shows UTC all the year round.</summary>
    public bool ShowsUtc => zone.MinOffset == Offset.Zero && zone.MaxOffset == Offset.Zero;

    /// <summary>Finds the clock of a time zone.</summary>
    /// <param name="zoneName">A name of the IANA database, such as Europe/Zurich, or UTC.</param>
    /// <returns>The clock; null when there is no such zone.</returns>
    public static SiteClock? Find(string zoneName)
    {
        ArgumentNullException.ThrowIfNull(zoneName);
        return DateTimeZoneProviders.Tzdb.GetZoneOrNull(zoneName) is { } zone ? new(zone) : null;
    }

    /// <summary>What the clock shows at a moment.</summary>
    /// <param name="utc">The moment; its kind must be UTC.</param>
    /// <returns>The time on the clock with its offset.</returns>
    /// <exception cref="ArgumentException">The kind is not UTC.</exception>
    public LocalMoment At(DateTime utc)
    {
        var offset = zone.GetUtcOffset(Instant.FromDateTimeUtc(utc)).ToTimeSpan();
        return new(utc, DateTime.SpecifyKind(utc + offset, DateTimeKind.Unspecified), offset);
    }

    /// <summary>Which moments a time on the clock means.</summary>
    /// <param name="local">Date and time as the clock shows them.</param>
    /// <returns>
    /// One moment as a rule; two, the earlier one first, where the clock is set back over this time; none where it is set
    /// forward over it.
    /// </returns>
    public IReadOnlyList<DateTime> Moments(DateTime local)
    {
        var mapped = zone.MapLocal(LocalDateTime.FromDateTime(local));
        return mapped.Count switch
        {
            0 => [],
            1 => [mapped.Single().ToDateTimeUtc()],
            _ => [mapped.First().ToDateTimeUtc(), mapped.Last().ToDateTimeUtc()],
        };
    }

    /// <summary>The first moment that a time on the clock means, or that of the change where the clock leaps over it.</summary>
    /// <param name="local">Date and time as the clock shows them.</param>
    /// <returns>The moment, UTC.</returns>
    public DateTime FirstMoment(DateTime local)
    {
        var mapped = zone.MapLocal(LocalDateTime.FromDateTime(local));
        return mapped.Count > 0
            ? mapped.First().ToDateTimeUtc()
            : mapped.LateInterval.Start.ToDateTimeUtc();
    }

    /// <summary>When the clock is set within a stretch of time.</summary>
    /// <param name="start">Its begin, UTC.</param>
    /// <param name="end">Its end, UTC.</param>
    /// <returns>The changes by time; as a rule none or one.</returns>
    public IReadOnlyList<ClockChange> Changes(DateTime start, DateTime end)
    {
        var changes = new List<ClockChange>();
        var from = Instant.FromDateTimeUtc(start);
        foreach (var interval in zone.GetZoneIntervals(from, Instant.FromDateTimeUtc(end)))
        {
            if (!interval.HasStart || interval.Start <= from)
            {
                continue;
            }

            var utc = interval.Start.ToDateTimeUtc();
            var before = At(utc.AddTicks(-1)).Offset;
            var change = new ClockChange(
                utc,
                new(utc, DateTime.SpecifyKind(utc + before, DateTimeKind.Unspecified), before),
                At(utc)
            );
            if (change.Forward != TimeSpan.Zero)
            {
                changes.Add(change);
            }
        }

        return changes;
    }

    /// <summary>The smallest offset in the year about a moment: that of winter time, where the clock is set twice a year.</summary>
    /// <param name="utc">The moment, UTC.</param>
    /// <returns>Local time minus UTC.</returns>
    public TimeSpan StandardOffset(DateTime utc) =>
        zone.GetZoneIntervals(
                Instant.FromDateTimeUtc(utc.AddDays(-183.0)),
                Instant.FromDateTimeUtc(utc.AddDays(183.0))
            )
            .Min(interval => interval.WallOffset.ToTimeSpan());

    /// <summary>A moment for a reader: UTC to the minute, and what the clock shows beside it.</summary>
    /// <param name="utc">The moment, UTC.</param>
    /// <returns>Such as <c>2026-12-05 21:00 UTC  (22:00 at the site, UTC+01:00)</c>; UTC alone where the clock shows UTC.</returns>
    public string Text(DateTime utc)
    {
        var at = At(Minute(utc));
        var text = string.Create(CultureInfo.InvariantCulture, $"{at.Utc:yyyy-MM-dd HH:mm} UTC");
        if (ShowsUtc)
        {
            return text;
        }

        var form = at.Local.Date == at.Utc.Date ? "HH:mm" : "yyyy-MM-dd HH:mm";
        return $"{text}  ({at.Local.ToString(form, CultureInfo.InvariantCulture)} at the site, UTC{at.OffsetText})";
    }

    /// <summary>A moment rounded to the minute.</summary>
    /// <param name="utc">The moment.</param>
    /// <returns>The nearest whole minute, halves upwards.</returns>
    public static DateTime Minute(DateTime utc)
    {
        var rounded = utc + HalfMinute;
        return new(rounded.Ticks - (rounded.Ticks % TimeSpan.TicksPerMinute), utc.Kind);
    }
}
