using System.Globalization;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>Writes a moment as UTC and as the clock at the site shows it, the offset beside it.</summary>
internal sealed class SiteClock
{
    private readonly TimeZoneInfo? zone;

    private SiteClock(TimeZoneInfo? zone) => this.zone = zone;

    public static SiteClock WithoutSite { get; } = new(null);

    public static SiteClock Of(SiteSection site, string file)
    {
        try
        {
            return new(TimeZoneInfo.FindSystemTimeZoneById(site.TimeZone));
        }
        catch (Exception unknown)
            when (unknown is TimeZoneNotFoundException or InvalidTimeZoneException)
        {
            throw new InputException(
                $"{file}: time_zone: \"{site.TimeZone}\": this machine knows no such zone; write a name such as \"Europe/Zurich\", or \"UTC\".",
                unknown
            );
        }
    }

    public string Text(DateTime utc)
    {
        var universal = Minutes(utc);
        var text = Stamp(universal) + " UTC";
        if (
            zone is null
            || (zone.BaseUtcOffset == TimeSpan.Zero && !zone.SupportsDaylightSavingTime)
        )
        {
            return text;
        }

        var offset = zone.GetUtcOffset(universal);
        var local = universal + offset;
        var day = local.Date == universal.Date ? string.Empty : DayMonth(local) + " ";
        var sign = offset < TimeSpan.Zero ? '-' : '+';
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{text}  ({day}{local:HH:mm} at the site, UTC{sign}{offset:hh\\:mm})"
        );
    }

    private static DateTime Minutes(DateTime utc) =>
        new(
            (utc.Ticks + (TimeSpan.TicksPerMinute / 2))
                / TimeSpan.TicksPerMinute
                * TimeSpan.TicksPerMinute,
            DateTimeKind.Utc
        );

    private static string Stamp(DateTime time) =>
        time.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    private static string DayMonth(DateTime time) =>
        time.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
