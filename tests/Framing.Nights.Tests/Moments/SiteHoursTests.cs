using Framing.Sky;

namespace Framing.Nights.Tests;

public sealed class SiteHoursTests
{
    [Fact]
    public void Places_AnywhereAndAnytime_AreThoseOfTheMoment()
    {
        var random = new Random(20261205);
        for (var round = 0; round < 60; round++)
        {
            var site = new ObservingSite(
                Angle.FromDegrees((random.NextDouble() * 180.0) - 90.0),
                Angle.FromDegrees((random.NextDouble() * 360.0) - 180.0),
                random.NextDouble() * 3000.0,
                AirConditions.Usual
            );

            // After the last leap second; before it a day in some hundred has one.
            var start = new DateTime(2017, 2, 1, 0, 0, 0, DateTimeKind.Utc).AddDays(
                random.NextDouble() * 30_000.0
            );
            var hours = new SiteHours(site, start, start.AddDays(2.3));
            var place = SkyDirection.FromDegrees(
                random.NextDouble() * 360.0,
                (random.NextDouble() * 180.0) - 90.0
            );
            var path = hours.Follow(place);
            for (var i = 0; i <= 20; i++)
            {
                var utc = i == 20 ? hours.End : start.AddDays(random.NextDouble() * 2.3);
                var moment = SiteMoment.Of(site, utc);
                Near(moment.Sun, hours.Sun(utc), 0.001);
                Near(moment.See(place), path.At(utc), 0.001);
                Assert.Equal(
                    path.At(utc).TrueAltitude.Degrees,
                    path.TrueAltitude(utc).Degrees,
                    1e-12
                );
                Assert.Equal(
                    hours.Sun(utc).TrueAltitude.Degrees,
                    hours.SunAltitude(utc).Degrees,
                    1e-12
                );
                var (expected, moon) = (moment.Moon, hours.Moon(utc));
                Near(expected.Place, moon.Place, 0.01);
                Assert.Equal(expected.DistanceKilometres, moon.DistanceKilometres, 0.1);
                Assert.Equal(expected.IlluminatedFraction, moon.IlluminatedFraction, 1e-6);
            }
        }
    }

    [Fact]
    public void New_OfWhatCannotBeLookedAt_IsRefused()
    {
        var site = new ObservingSite(Angle.Zero, Angle.Zero, 0.0, AirConditions.Usual);
        var start = TestTable.Time("2026-01-01T00:00:00Z");
        Assert.Throws<ArgumentOutOfRangeException>(() => new SiteHours(site, start, start));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new SiteHours(site, start, start.AddDays(401.0))
        );
        Assert.Throws<ArgumentException>(() =>
            new SiteHours(site, start, DateTime.SpecifyKind(start.AddDays(1.0), DateTimeKind.Local))
        );
        var hours = new SiteHours(site, start, start.AddDays(1.0));
        Assert.Throws<ArgumentOutOfRangeException>(() => hours.Sun(start.AddDays(1.1)));
        Assert.Throws<ArgumentException>(() => hours.Follow(default));
    }

    private static void Near(HorizontalPlace expected, HorizontalPlace actual, double arcseconds)
    {
        var cos = Math.Cos(expected.TrueAltitude.Radians);
        var up = (actual.TrueAltitude - expected.TrueAltitude).Arcseconds;
        var along = (actual.Azimuth - expected.Azimuth).WrappedSigned.Arcseconds * cos;
        Assert.InRange(double.Hypot(up, along), 0.0, arcseconds);
    }
}
