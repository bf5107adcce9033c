using System.Globalization;
using Framing.Sky;

namespace Framing.Nights.Tests;

/// <summary>Nights against ERFA 2.0.0 at one-minute steps; see tests/reference/nights/make_values.py.</summary>
public sealed class NightOfSunTests
{
    private const double Tolerance = 0.012;

    // By DarknessLevel.
    private static readonly string[] StatusWords =
    [
        "no night: the Sun does not set",
        "no darkness: civil twilight lasts, the Sun stays above -6°",
        "no nautical darkness: the Sun stays above -12°",
        "no astronomical darkness: the Sun stays above -18°",
        "barely dark: the Sun goes just below -18°",
        "astronomically dark",
    ];

    [Fact]
    public void Of_AnyLatitudeAndMonth_IsTheNightThatErfaFinds()
    {
        var rows = TestTable.Read("sun-nights.csv");
        Assert.Equal(204, rows.Count);
        var events = 0;
        foreach (var row in rows)
        {
            var night = Night(row.Site, row.Text("evening"));
            Assert.Equal(row["lowest_deg"], night.LowestSun.Degrees, Tolerance);
            Assert.Equal(row["highest_deg"], night.HighestSun.Degrees, Tolerance);
            events += Check(row, "set", -0.833, night.SunDown);
            events += Check(row, "civil", -6.0, night.BelowCivil);
            events += Check(row, "nautical", -12.0, night.BelowNautical);
            events += Check(row, "astronomical", -18.0, night.Dark);

            // The words, from the lowest and highest altitudes of the judge; close to a limit either word is right.
            var lowest = row["lowest_deg"];
            double[] limits = [-18.1, -18.0, -12.0, -6.0, -0.833];
            if (limits.All(limit => Math.Abs(lowest - limit) > Tolerance))
            {
                var expected = 5 - limits.Count(limit => lowest > limit);
                Assert.Equal((DarknessLevel)expected, night.Darkness);
                Assert.EndsWith(StatusWords[expected], night.Words, StringComparison.Ordinal);
            }

            if (Math.Abs(row["highest_deg"] + 0.833) > Tolerance)
            {
                Assert.Equal(row["highest_deg"] < -0.833, night.IsPolarNight);
                Assert.Equal(
                    row["highest_deg"] < -0.833,
                    night.Words.StartsWith(
                        "polar night, the Sun does not rise; ",
                        StringComparison.Ordinal
                    )
                );
            }
        }

        Assert.InRange(events, 800, 1632);
    }

    [Theory]
    [InlineData(69.7, "2026-06-21", "no night: the Sun does not set")]
    [InlineData(60.0, "2026-06-21", "no nautical darkness: the Sun stays above -12°")]
    [InlineData(65.0, "2026-06-21", "no darkness: civil twilight lasts, the Sun stays above -6°")]
    [InlineData(52.0, "2026-06-21", "no astronomical darkness: the Sun stays above -18°")]
    [InlineData(45.0, "2026-06-21", "astronomically dark")]
    [InlineData(69.7, "2026-12-21", "polar night, the Sun does not rise; astronomically dark")]
    [InlineData(
        90.0,
        "2026-11-01",
        "polar night, the Sun does not rise; no astronomical darkness: the Sun stays above -18°"
    )]
    public void Words_OfANight_SayWhatKindItIs(double latitude, string evening, string words)
    {
        var site = new ObservingSite(
            Angle.FromDegrees(latitude),
            Angle.Zero,
            0.0,
            AirConditions.Usual
        );
        Assert.Equal(words, Night(site, evening).Words);
    }

    [Fact]
    public void Dark_InASummer_IsMissingOnTheNightsThatErfaNames()
    {
        var rows = TestTable.Read("dark-nights.csv");
        Assert.Equal(4, rows.Count);
        foreach (var row in rows)
        {
            var site = new ObservingSite(
                Angle.FromDegrees(row["lat_deg"]),
                Angle.Zero,
                0.0,
                AirConditions.Usual
            );

            // The nights about either end.
            foreach (var end in new[] { row.Text("first"), row.Text("last") })
            {
                var day = DateOnly.ParseExact(end, "yyyy-MM-dd", CultureInfo.InvariantCulture);
                for (var i = -6; i <= 6; i++)
                {
                    var text = day.AddDays(i).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
                    var bright =
                        string.CompareOrdinal(text, row.Text("first")) >= 0
                        && string.CompareOrdinal(text, row.Text("last")) <= 0;
                    Assert.Equal(bright, Night(site, text).Dark.Count == 0);
                }
            }
        }
    }

    [Fact]
    public void Of_BeyondTheYears_IsRefused()
    {
        var site = new ObservingSite(Angle.Zero, Angle.Zero, 0.0, AirConditions.Usual);
        Assert.Throws<ArgumentOutOfRangeException>(() => NightOfSun.Of(site, new(2199, 1, 1)));
    }

    internal static NightOfSun Night(ObservingSite site, string evening) =>
        NightOfSun.Of(
            site,
            DateOnly.ParseExact(evening, "yyyy-MM-dd", CultureInfo.InvariantCulture)
        );

    private static int Check(
        TestTable row,
        string name,
        double limit,
        IReadOnlyList<UtcInterval> below
    ) =>
        Agreement.Check(
            below,
            row.Text("start_" + name) == "down",
            row.Times(name + "_events"),
            utc => limit - SiteMoment.Of(row.Site, utc).Sun.TrueAltitude.Degrees,
            Tolerance
        );
}
