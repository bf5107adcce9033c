using System.Globalization;
using System.Text.Json;
using Framing.Sky;

namespace Framing.Nights.Tests;

public sealed class SiteClockTests
{
    private static readonly IReadOnlyDictionary<string, JsonElement> Cases = TestTable.Json(
        "localtime.cases.json"
    );

    public static TheoryData<string> Lengths() =>
        [
            .. TestTable
                .Checks("night.checks.json")
                .Where(entry => entry.Value.Inputs.TryGetProperty("noon_of", out _))
                .Select(entry => entry.Key),
        ];

    [Fact]
    public void Lengths_AreAllThere() => Assert.Equal(5, Lengths().Count);

    [Theory]
    [MemberData(nameof(Lengths))]
    public void FirstMoment_OfTwoNoons_IsADayOrAnHourMoreOrLess(string id)
    {
        var entry = TestTable.Checks("night.checks.json")[id];
        var clock = Clock(entry.Inputs);
        var noon = Local(entry.Inputs.GetProperty("noon_of").GetString()! + " 12:00");
        var hours = entry.Expect.GetProperty("hours_noon_to_noon").GetDouble();
        var (first, second) = (clock.FirstMoment(noon), clock.FirstMoment(noon.AddDays(1.0)));
        Assert.Equal(hours, (second - first).TotalHours, 1e-9);

        // What was set in between says the same.
        var changes = clock.Changes(first, second);
        Assert.Equal(24.0 - hours, changes.Sum(change => change.Forward.TotalHours), 1e-9);
    }

    [Fact]
    public void Moments_OfATimeThatComesTwice_AreBoth()
    {
        var entry = TestTable.Checks("night.checks.json")["nt-dst-ambiguous"];
        var clock = Clock(entry.Inputs);
        var moments = clock.Moments(Local("2026-10-25 02:30"));
        Assert.Equal(
            [
                entry.Expect.GetProperty("first_utc").GetString(),
                entry.Expect.GetProperty("second_utc").GetString(),
            ],
            moments.Select(utc => utc.ToString("HH:mm", CultureInfo.InvariantCulture))
        );
        Assert.Equal(moments[0], clock.FirstMoment(Local("2026-10-25 02:30")));

        // Back again both read 02:30, told apart by their offsets.
        Assert.Equal(
            ["2026-10-25T02:30:00+02:00", "2026-10-25T02:30:00+01:00"],
            moments.Select(utc => clock.At(utc).IsoText)
        );
    }

    [Fact]
    public void Moments_OfATimeThatIsLeaptOver_AreNone()
    {
        var entry = TestTable.Checks("night.checks.json")["nt-dst-gap"];
        var clock = Clock(entry.Inputs);
        Assert.False(entry.Expect.GetProperty("exists").GetBoolean());
        Assert.Empty(clock.Moments(Local("2026-03-29 02:30")));
        var transition = TestTable.Time(entry.Expect.GetProperty("transition_utc").GetString()!);
        Assert.Equal(transition, clock.FirstMoment(Local("2026-03-29 02:30")));
        var change = Assert.Single(
            clock.Changes(transition.AddHours(-6.0), transition.AddHours(6.0))
        );
        Assert.Equal(transition, change.Utc);
        Assert.Equal(
            "the clocks go forward from 02:00 to 03:00: the times between do not exist",
            change.Words
        );
    }

    [Fact]
    public void Cases_OfLocalTime_AreFour() => Assert.Equal(4, Cases.Count);

    [Fact]
    public void F36_ALocalTimeThatDoesNotExist_IsNoMoment()
    {
        var text = Cases["F36"].GetProperty("text");
        Assert.Empty(Clock(text).Moments(Local(text.GetProperty("local").GetString()!)));
    }

    [Fact]
    public void F37_ALocalTimeInDublin_ComesTwice()
    {
        var text = Cases["F37"].GetProperty("text");
        var expected = Cases["F37"]
            .GetProperty("expect")
            .GetProperty("instants")
            .EnumerateArray()
            .Select(time => TestTable.Time(time.GetString()!));
        Assert.Equal(expected, Clock(text).Moments(Local(text.GetProperty("local").GetString()!)));
        var change = Assert.Single(
            Clock(text)
                .Changes(
                    TestTable.Time("2026-10-24T20:00:00Z"),
                    TestTable.Time("2026-10-25T08:00:00Z")
                )
        );
        Assert.Equal(
            "the clocks go back from 02:00 to 01:00: the times between come twice, first with +01:00, then with +00:00",
            change.Words
        );
    }

    [Fact]
    public void F38_ANightInMadrid_IsAnHourLonger()
    {
        var text = Cases["F38"].GetProperty("text");
        var clock = Clock(text);
        var from = clock.FirstMoment(Local(text.GetProperty("from").GetString()!));
        var to = clock.FirstMoment(Local(text.GetProperty("to").GetString()!));
        Assert.Equal(
            Cases["F38"].GetProperty("expect").GetProperty("hours").GetDouble(),
            (to - from).TotalHours
        );
    }

    [Fact]
    public void F39_AMidsummerNightInTheNorth_HasNoEvents()
    {
        var text = Cases["F39"].GetProperty("text");
        var expect = Cases["F39"].GetProperty("expect");
        var site = new ObservingSite(
            Angle.FromDegrees(text.GetProperty("lat").GetDouble()),
            Angle.FromDegrees(text.GetProperty("lon_east").GetDouble()),
            0.0,
            AirConditions.Usual
        );
        var night = NightOfSunTests.Night(site, text.GetProperty("date").GetString()!);
        Assert.Empty(night.SunDown);
        Assert.Empty(night.Dark);
        Assert.Equal(
            expect.GetProperty("lowest_sun_altitude_deg").GetDouble(),
            night.LowestSun.Degrees,
            0.01
        );
        Assert.Equal("no night: the Sun does not set", night.Words);
        Assert.NotNull(SiteClock.Find(text.GetProperty("zone").GetString()!));
    }

    [Theory]
    [InlineData("2026-12-05T21:00:29Z", "2026-12-05 21:00 UTC  (22:00 at the site, UTC+01:00)")]
    [InlineData("2026-07-05T23:59:30Z", "2026-07-06 00:00 UTC  (02:00 at the site, UTC+02:00)")]
    [InlineData(
        "2026-07-05T22:30:00Z",
        "2026-07-05 22:30 UTC  (2026-07-06 00:30 at the site, UTC+02:00)"
    )]
    public void Text_OfAMoment_HasBothClocks(string utc, string expected) =>
        Assert.Equal(expected, SiteClock.Find("Europe/Zurich")!.Text(TestTable.Time(utc)));

    [Theory]
    [InlineData("Europe/Zurich", "2026-07-01T00:00:00Z", 1.0)]
    [InlineData("Europe/Dublin", "2026-07-01T00:00:00Z", 0.0)]
    [InlineData("Australia/Lord_Howe", "2026-01-01T00:00:00Z", 10.5)]
    [InlineData("Asia/Kathmandu", "2026-01-01T00:00:00Z", 5.75)]
    public void StandardOffset_OfAZone_IsThatOfWinter(string zone, string utc, double hours) =>
        Assert.Equal(
            hours,
            SiteClock.Find(zone)!.StandardOffset(TestTable.Time(utc)).TotalHours,
            1e-9
        );

    [Fact]
    public void Find_OfNoZone_IsNull()
    {
        Assert.Null(SiteClock.Find("Mars/Base"));
        Assert.Contains("Europe/Zurich", SiteClock.ZoneNames);
        Assert.True(SiteClock.Utc.ShowsUtc);
        Assert.False(SiteClock.Find("Europe/London")!.ShowsUtc);
    }

    private static SiteClock Clock(JsonElement inputs) =>
        SiteClock.Find(inputs.GetProperty("zone").GetString()!)!;

    private static DateTime Local(string text) =>
        DateTime.ParseExact(text, "yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
}
