using Framing.Sky;

namespace Framing.Nights.Tests;

public sealed class SwitchOnTests
{
    // Offsets of the zones: IANA time zone database.
    [Theory]
    [InlineData(
        "Europe/Zurich",
        "2026-12-05T15:42:10Z",
        DateOrder.MonthDayYear,
        "12-05-2026",
        "16:42",
        "+01:00",
        false
    )]
    [InlineData(
        "Europe/Zurich",
        "2026-07-05T19:30:40Z",
        DateOrder.DayMonthYear,
        "05-07-2026",
        "21:31",
        "+01:00",
        true
    )]
    [InlineData(
        "America/St_Johns",
        "2026-07-05T23:30:00Z",
        DateOrder.YearMonthDay,
        "2026-07-05",
        "21:00",
        "-03:30",
        true
    )]
    [InlineData(
        "Australia/Lord_Howe",
        "2026-01-05T09:00:00Z",
        DateOrder.DayMonthYear,
        "05-01-2026",
        "20:00",
        "+10:30",
        true
    )]
    [InlineData(
        "Europe/Dublin",
        "2026-12-05T16:00:00Z",
        DateOrder.DayMonthYear,
        "05-12-2026",
        "16:00",
        "+00:00",
        false
    )]
    [InlineData(
        "UTC",
        "2026-12-05T23:59:40Z",
        DateOrder.YearMonthDay,
        "2026-12-06",
        "00:00",
        "+00:00",
        false
    )]
    public void Of_AMoment_IsWhatTheClockShows(
        string zone,
        string utc,
        DateOrder order,
        string date,
        string time,
        string offset,
        bool saving
    )
    {
        var entry = Entry(zone, utc, order, 46.2, 8.1);
        Assert.Equal(date, entry.DateText);
        Assert.Equal(time, entry.TimeText);
        Assert.Equal(offset, entry.ZoneText);
        Assert.Equal(saving, entry.IsDaylightSaving);
        Assert.Equal(zone, entry.ZoneName);
        Assert.Equal(
            order == DateOrder.YearMonthDay,
            entry.DateOrderText.StartsWith("year", StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData(46.2, 8.1, "46° 12′ N", "8° 06′ E")]
    [InlineData(-33.9999, -70.6667, "34° 00′ S", "70° 40′ W")]
    [InlineData(0.001, -0.001, "0° 00′ N", "0° 00′ E")]
    [InlineData(-90.0, 179.9999, "90° 00′ S", "180° 00′ E")]
    public void Texts_OfASite_AreDegreesAndMinutes(
        double latitude,
        double longitude,
        string north,
        string east
    )
    {
        var entry = Entry("UTC", "2026-12-05T18:00:00Z", default, latitude, longitude);
        Assert.Equal(north, entry.LatitudeText);
        Assert.Equal(east, entry.LongitudeText);
    }

    [Fact]
    public void Change_InTheNight_IsNamed()
    {
        var entry = Entry("Europe/Zurich", "2026-10-24T16:30:00Z", default, 46.2, 8.1);
        Assert.True(entry.IsDaylightSaving);
        Assert.StartsWith(
            "the clocks go back from 03:00 to 02:00",
            entry.Change!.Value.Words,
            StringComparison.Ordinal
        );
        Assert.Null(Entry("Europe/Zurich", "2026-10-23T16:30:00Z", default, 46.2, 8.1).Change);
    }

    private static SwitchOn Entry(
        string zone,
        string utc,
        DateOrder order,
        double latitude,
        double longitude
    )
    {
        var time = TestTable.Time(utc);
        return SwitchOn.Of(
            SiteClock.Find(zone)!,
            order,
            new(
                Angle.FromDegrees(latitude),
                Angle.FromDegrees(longitude),
                0.0,
                AirConditions.Usual
            ),
            time,
            time.AddHours(15.0)
        );
    }
}
