using Framing.Sky;

namespace Framing.Nights.Tests;

/// <summary>Places over the horizon against ERFA 2.0.0; see tests/reference/nights/make_values.py.</summary>
public sealed class SiteMomentTests
{
    [Fact]
    public void See_OfStarsAnywhere_IsWhereErfaSeesThem()
    {
        var rows = TestTable.Read("places.csv");
        Assert.Equal(3000, rows.Count);
        foreach (var row in rows)
        {
            var place = SiteMoment
                .Of(row.Site, row.Utc)
                .See(SkyDirection.FromDegrees(row["ra_deg"], row["dec_deg"]));
            var cos = Math.Cos(place.TrueAltitude.Radians);
            Near(row["altitude_deg"], place.TrueAltitude.Degrees, 1.0, 0.1);
            Near(row["azimuth_deg"], place.Azimuth.Degrees, cos, 0.1);
            Near(
                row["hour_angle_deg"],
                place.HourAngle.Degrees,
                Math.Cos(double.DegreesToRadians(row["dec_deg"])),
                // ERFA gives the hour angle before the aberration of the Earth's turning, 0.32″ at most.
                0.5
            );
            Near(row["parallactic_deg"], place.ParallacticAngle.Degrees, cos, 1.0);
        }
    }

    [Fact]
    public void Sun_Anywhere_IsWhereErfaSeesIt()
    {
        var rows = TestTable.Read("sun.csv");
        Assert.Equal(1000, rows.Count);
        foreach (var row in rows)
        {
            var moment = SiteMoment.Of(row.Site, row.Utc);
            var sun = SkyDirection.FromDegrees(row["ra_deg"], row["dec_deg"]);
            Assert.InRange(moment.Frame.Sun.SeparationTo(sun).Arcseconds, 0.0, 3.0);
            Near(row["altitude_deg"], moment.Sun.TrueAltitude.Degrees, 1.0, 3.0);
            Assert.Equal(
                row["distance_au"],
                SunDistance.AstronomicalUnits(moment.Frame.Time),
                2e-4
            );
        }
    }

    [Fact]
    public void Moon_Anywhere_IsWhereErfaSeesIt()
    {
        var rows = TestTable.Read("moon.csv");
        Assert.Equal(1000, rows.Count);
        foreach (var row in rows)
        {
            var moment = SiteMoment.Of(row.Site, row.Utc);
            var centre = MoonPlace.At(moment.Frame);
            var expected = SkyDirection.FromDegrees(row["ra_deg"], row["dec_deg"]);
            Assert.InRange(centre.Direction.SeparationTo(expected).Degrees, 0.0, 0.0005);
            Assert.Equal(row["distance_km"], centre.DistanceKilometres, 1.0);
            var seen = moment.Moon;
            Near(row["topo_altitude_deg"], seen.Place.TrueAltitude.Degrees, 1.0, 2.0);
            Near(
                row["topo_azimuth_deg"],
                seen.Place.Azimuth.Degrees,
                Math.Cos(seen.Place.TrueAltitude.Radians),
                2.0
            );
            Assert.Equal(row["topo_distance_km"], seen.DistanceKilometres, 1.0);
            Assert.Equal(row["lit"], seen.IlluminatedFraction, 1e-4);
            Assert.InRange(seen.SemiDiameter.Arcminutes, 14.5, 17.1);
        }
    }

    [Theory]
    [InlineData(90.0)]
    [InlineData(-90.0)]
    [InlineData(0.0)]
    public void See_FromPolesAndEquator_GivesNumbers(double latitude)
    {
        var site = new ObservingSite(
            Angle.FromDegrees(latitude),
            Angle.Zero,
            0.0,
            AirConditions.Usual
        );
        var moment = SiteMoment.Of(site, TestTable.Time("2026-11-20T21:00:00Z"));
        foreach (var declination in new[] { 90.0, 0.0, -90.0 })
        {
            var place = moment.SeeOfDate(SkyDirection.FromDegrees(10.0, declination));
            var sum = latitude * declination;
            if (Math.Abs(sum) > 1.0)
            {
                Assert.Equal(sum > 0.0 ? 90.0 : -90.0, place.TrueAltitude.Degrees, 1e-3);
            }
        }
    }

    [Fact]
    public void Of_BeyondTheYears_IsRefused()
    {
        var site = new ObservingSite(Angle.Zero, Angle.Zero, 0.0, AirConditions.Usual);
        Assert.False(SiteMoment.Covers(TestTable.Time("2200-01-01T00:00:00Z")));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            SiteMoment.Of(site, TestTable.Time("1900-12-31T00:00:00Z"))
        );
    }

    [Fact]
    public void See_OfNoDirection_IsRefused()
    {
        var site = new ObservingSite(Angle.Zero, Angle.Zero, 0.0, AirConditions.Usual);
        var moment = SiteMoment.Of(site, TestTable.Time("2026-01-01T00:00:00Z"));
        Assert.Throws<ArgumentException>(() => moment.See(default));
        Assert.Throws<ArgumentException>(() => moment.SeeOfDate(default));
    }

    private static void Near(double expected, double actual, double factor, double arcseconds) =>
        Assert.InRange(
            Math.Abs(Math.IEEERemainder(actual - expected, 360.0)) * factor * 3600.0,
            0.0,
            arcseconds
        );
}
