using System.Globalization;
using Framing.Sky;

namespace Framing.Nights;

/// <summary>What a hand control asks for when it is switched on, as it is to be typed.</summary>
/// <param name="At">When it is switched on.</param>
/// <param name="ZoneName">The zone's name in the IANA database.</param>
/// <param name="ZoneOffset">The zone's offset without daylight saving: local time minus UTC.</param>
/// <param name="DateOrder">In which order the hand control takes a date.</param>
/// <param name="Latitude">Geographic latitude, north positive.</param>
/// <param name="Longitude">Geographic longitude, east positive.</param>
/// <param name="Change">The first change of the clock within the night; null when there is none.</param>
public sealed record SwitchOn(
    LocalMoment At,
    string ZoneName,
    TimeSpan ZoneOffset,
    DateOrder DateOrder,
    Angle Latitude,
    Angle Longitude,
    ClockChange? Change
)
{
    /// <summary>True when the clock shows daylight saving time.</summary>
    public bool IsDaylightSaving => At.Offset != ZoneOffset;

    /// <summary>The date on the clock in the hand control's order: 12-05-2026.</summary>
    public string DateText =>
        At.Local.ToString(
            DateOrder switch
            {
                DateOrder.MonthDayYear => "MM-dd-yyyy",
                DateOrder.DayMonthYear => "dd-MM-yyyy",
                _ => "yyyy-MM-dd",
            },
            CultureInfo.InvariantCulture
        );

    /// <summary>The order of <see cref="DateText"/> in words.</summary>
    public string DateOrderText =>
        DateOrder switch
        {
            DateOrder.MonthDayYear => "month, day, year",
            DateOrder.DayMonthYear => "day, month, year",
            _ => "year, month, day",
        };

    /// <summary>The time on the clock, to the minute: 17:38.</summary>
    public string TimeText => At.Local.ToString("HH:mm", CultureInfo.InvariantCulture);

    /// <summary>The zone's offset without daylight saving: +01:00.</summary>
    public string ZoneText => (At with { Offset = ZoneOffset }).OffsetText;

    /// <summary>Latitude in degrees and whole minutes: 46° 12′ N.</summary>
    public string LatitudeText => Text(Latitude, 'N', 'S');

    /// <summary>Longitude in degrees and whole minutes: 8° 06′ E.</summary>
    public string LongitudeText => Text(Longitude, 'E', 'W');

    /// <summary>What to type at a moment.</summary>
    /// <param name="clock">The clock at the site.</param>
    /// <param name="order">In which order the hand control takes a date.</param>
    /// <param name="site">The site.</param>
    /// <param name="utc">When it is switched on, UTC.</param>
    /// <param name="end">The end of the night, UTC: changes of the clock until then are named.</param>
    /// <returns>What to type; the moment is rounded to the minute.</returns>
    public static SwitchOn Of(
        SiteClock clock,
        DateOrder order,
        ObservingSite site,
        DateTime utc,
        DateTime end
    )
    {
        ArgumentNullException.ThrowIfNull(clock);
        ArgumentNullException.ThrowIfNull(site);
        var changes = clock.Changes(utc, end);
        return new(
            clock.At(SiteClock.Minute(utc)),
            clock.ZoneName,
            clock.StandardOffset(utc),
            order,
            site.Latitude,
            site.Longitude,
            changes.Count > 0 ? changes[0] : null
        );
    }

    private static string Text(Angle angle, char positive, char negative)
    {
        var minutes = (int)Math.Round(Math.Abs(angle.Arcminutes), MidpointRounding.AwayFromZero);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{minutes / 60}° {minutes % 60:00}′ {(angle.Radians < 0.0 && minutes > 0 ? negative : positive)}"
        );
    }
}
