using Framing.Sky;

namespace Framing.Nights.Tests;

/// <summary>Rises, sets and twilights against ERFA 2.0.0; see tests/reference/nights/make_values.py.</summary>
public sealed class RiseAndSetTests
{
    [Fact]
    public void StarAbove_AndMoonUp_FindWhatErfaFinds()
    {
        var rows = TestTable.Read("events.csv");
        Assert.Equal(160, rows.Count);
        var events = 0;
        foreach (var row in rows)
        {
            var end = row.Utc.AddDays(1.0);
            var moon = row.Text("what") == "moon";
            var direction = SkyDirection.FromDegrees(row["ra_deg"], row["dec_deg"]);
            var limit = Angle.FromArcminutes(-34.0);
            var up = moon
                ? RiseAndSet.MoonUp(row.Site, row.Utc, end)
                : RiseAndSet.StarAbove(direction, row.Site, limit, row.Utc, end);
            double Height(DateTime utc)
            {
                var moment = SiteMoment.Of(row.Site, utc);
                return moon
                    ? (moment.Moon.Place.TrueAltitude + moment.Moon.SemiDiameter - limit).Degrees
                    : (moment.See(direction).TrueAltitude - limit).Degrees;
            }

            events += Agreement.Check(
                up,
                row.Text("starts") == "up",
                row.Times("events"),
                Height,
                moon ? 0.01 : 0.002
            );
        }

        Assert.InRange(events, 150, 320);
    }

    [Fact]
    public void NextTransit_OfStars_StandsOnTheMeridian()
    {
        foreach (var row in TestTable.Read("events.csv"))
        {
            var direction = SkyDirection.FromDegrees(row["ra_deg"], row["dec_deg"]);
            var star = RiseAndSet.NextTransit(direction, row.Site, row.Utc);
            Assert.InRange((star - row.Utc).TotalHours, 0.0, 23.94);
            var angle = SiteMoment.Of(row.Site, star).See(direction).HourAngle;
            Assert.InRange(Math.Abs(angle.Arcseconds), 0.0, 0.1);
            var moon = RiseAndSet.NextMoonTransit(row.Site, row.Utc);
            Assert.InRange((moon - row.Utc).TotalHours, 0.0, 25.5);
            var moonAngle = SiteMoment.Of(row.Site, moon).Moon.Place.HourAngle;
            Assert.InRange(Math.Abs(moonAngle.Arcseconds), 0.0, 0.1);
        }
    }

    [Fact]
    public void StarUp_UsesTheAirOfTheSite()
    {
        var start = TestTable.Time("2026-11-20T12:00:00Z");
        var direction = SkyDirection.FromDegrees(120.0, 10.0);
        UtcInterval Up(AirConditions air) =>
            RiseAndSet.StarUp(
                direction,
                new(Angle.FromDegrees(47.0), Angle.FromDegrees(11.0), 1500.0, air),
                start,
                start.AddDays(1.0)
            )[0];
        var thin = Up(new(0.0, 10.0));
        var thick = Up(new(1010.0, -20.0));
        Assert.True(thick.Start < thin.Start);
        Assert.True(thick.End > thin.End);
    }

    [Fact]
    public void SunBelow_WithTheEndFirst_IsRefused()
    {
        var site = new ObservingSite(Angle.Zero, Angle.Zero, 0.0, AirConditions.Usual);
        var time = TestTable.Time("2026-01-01T00:00:00Z");
        Assert.Throws<ArgumentException>(() => RiseAndSet.SunBelow(site, Angle.Zero, time, time));
    }
}
