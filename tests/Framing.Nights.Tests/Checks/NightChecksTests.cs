using System.Globalization;
using System.Text.Json;
using Framing.Sky;

namespace Framing.Nights.Tests;

/// <summary>Published examples and reference values of the night; each entry names its source.</summary>
public sealed class NightChecksTests
{
    private static readonly IReadOnlyDictionary<string, Check> Entries = TestTable.Checks(
        "night.checks.json"
    );

    [Fact]
    public void Entries_AreAllThere() => Assert.Equal(52, Entries.Count);

    // The skyline's entries are in HorizonTests, those of clocks in SiteClockTests.
    public static TheoryData<string> Ids() =>
        [
            .. Entries.Keys.Where(id =>
                !id.StartsWith("nt-horizon", StringComparison.Ordinal)
                && !id.StartsWith("nt-dst", StringComparison.Ordinal)
            ),
        ];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Entry_Always_Holds(string id)
    {
        var check = Entries[id];
        var kind = string.Join('-', id.Split('-').Take(2));
        switch (kind)
        {
            case "nt-sofa" when id == "nt-sofa-gmst06":
                // UT1 = TT there, UTC = UT1 here: 65 s of precession, 5e-10 rad. Nutation IAU 2000B for 2000A: 5e-9 rad.
                var time = TestTable.Time("2006-01-01T00:00:00Z");
                check.Near("gmst_rad", SiderealTime.GreenwichMean(time).Radians, 2e-9);
                check.Near("gast_rad", Apparent(time).Radians, 1e-8);
                break;
            case "nt-sofa" when id == "nt-sofa-moon98":
                FullModels.Moon(check);
                break;
            case "nt-sofa" when id == "nt-sofa-epv00":
                FullModels.Earth(check);
                break;
            case "nt-sofa":
                Horizontal(check);
                break;
            case "nt-meeus":
                Meeus(id, check);
                break;
            case "nt-refr":
                var seen = Angle.FromDegrees(check.In("alt_deg"));
                check.Near(
                    "bennett_apparent_arcmin",
                    Refraction.AtApparent(seen, AirConditions.Usual).Arcminutes
                );
                check.Near(
                    "saemundsson_true_arcmin",
                    Refraction.AtTrue(seen, AirConditions.Usual).Arcminutes
                );
                break;
            case "nt-airmass":
                var altitudes = check.Inputs.GetProperty("alt_deg").EnumerateArray().ToList();
                var masses = check.Expect.GetProperty("airmass").EnumerateArray().ToList();
                Assert.Equal(7, masses.Count);
                for (var i = 0; i < masses.Count; i++)
                {
                    // Ours is Kasten and Young's; Pickering's differs by 2.2 % at the horizon, by 0.3 % from 5° on.
                    var own = id == "nt-airmass-ky";
                    var altitude = altitudes[i].GetDouble();
                    Assert.Equal(
                        masses[i].GetDouble(),
                        Airmass.At(Angle.FromDegrees(altitude))!.Value,
                        own ? 1e-5 : masses[i].GetDouble() * (altitude < 5.0 ? 0.022 : 0.003)
                    );
                }

                break;
            case "nt-sun":
                var sunFrame = OfDateFrame.At(TerrestrialTime.FromUtc(check.Utc));
                check.NearAngle("ra", sunFrame.Sun.RightAscension);
                check.NearAngle("dec", sunFrame.Sun.Declination);
                check.Near("R_au", SunDistance.AstronomicalUnits(sunFrame.Time));
                break;
            case "nt-moon":
                Moon(check);
                break;
            case "nt-twi":
                Twilight(check);
                break;
            case "nt-nodark":
                NightsWithoutDarkness(check);
                break;
            case "nt-minalt":
                check.Near(
                    "min_sun_alt",
                    NightOfSunTests.Night(check.Site, check.Text("night_of")).LowestSun.Degrees
                );
                break;
            case "nt-altaz":
                Star(check);
                break;
            case "nt-ha":
                var half = ArcAbove.Half(
                    Angle.FromDegrees(check.In("lat")),
                    Angle.FromDegrees(check.In("dec")),
                    Angle.FromDegrees(check.In("alt"))
                );
                if (check.Expect.GetProperty("ha_deg").ValueKind == JsonValueKind.Null)
                {
                    Assert.Equal("never above", check.Expect.GetProperty("state").GetString());
                    Assert.Equal(Angle.Zero, half);
                }
                else
                {
                    check.Near("ha_deg", half.Degrees);
                    check.Near("cosH", Math.Cos(half.Radians));
                }

                break;
            case "nt-transit":
                Transit(check);
                break;
            default:
                Assert.Fail($"Nothing answers {id}.");
                break;
        }
    }

    private static void Horizontal(Check check)
    {
        var (sinHour, cosHour) = Math.SinCos(check.In("ha_rad"));
        var (sinDec, cosDec) = Math.SinCos(check.In("dec_rad"));
        var site = new ObservingSite(
            Angle.FromRadians(check.In("lat_rad")),
            Angle.Zero,
            0.0,
            AirConditions.Usual
        );
        var place = SiteMoment.FromHourAxes(site, cosDec * cosHour, -cosDec * sinHour, sinDec);
        if (check.Expect.TryGetProperty("parallactic_rad", out _))
        {
            check.Near("parallactic_rad", place.ParallacticAngle.Radians);
        }
        else
        {
            check.Near("alt_rad", place.TrueAltitude.Radians);
            check.Near("az_rad_north_through_east", place.Azimuth.Radians);
        }
    }

    private static void Meeus(string id, Check check)
    {
        switch (id)
        {
            case "nt-meeus-12a":
                // The book has the GMST of 1982; that of 2006 differs by 0.0033 s, 1.4e-5°.
                check.Near("gmst_deg", SiderealTime.GreenwichMean(Ut(check)).Degrees, 5e-5);
                check.Near("gast_deg", Apparent(Ut(check)).Degrees);
                break;
            case "nt-meeus-12b":
                check.Near("gmst_deg", SiderealTime.GreenwichMean(Ut(check)).Degrees, 5e-5);
                break;
            case "nt-meeus-13b":
                var hour = double.DegreesToRadians(check.In("ha_deg"));
                var dec = -(6.0 + (43.0 / 60.0) + (11.61 / 3600.0)) * Math.PI / 180.0;
                var site = new ObservingSite(
                    Angle.FromDegrees(38.0 + (55.0 / 60.0) + (17.0 / 3600.0)),
                    Angle.Zero,
                    0.0,
                    AirConditions.Usual
                );
                var place = SiteMoment.FromHourAxes(
                    site,
                    Math.Cos(dec) * Math.Cos(hour),
                    -Math.Cos(dec) * Math.Sin(hour),
                    Math.Sin(dec)
                );
                check.Near("az_north_deg", place.Azimuth.Degrees);
                check.Near("alt_deg", place.TrueAltitude.Degrees);
                break;
            case "nt-meeus-15a":
                FullModels.Venus(check);
                break;
            case "nt-meeus-16a":
                var air = AirConditions.Usual;
                check.Near(
                    "bennett_arcmin",
                    Refraction
                        .AtApparent(Angle.FromDegrees(check.In("apparent_alt_deg")), air)
                        .Arcminutes
                );
                check.Near(
                    "saemundsson_arcmin_at_true",
                    Refraction
                        .AtTrue(Angle.FromDegrees(check.In("true_alt_upper_deg")), air)
                        .Arcminutes
                );
                break;
            case "nt-meeus-25a":
                // The book's rigorous place of the Sun in the entry's note, within the 3″ of the frame.
                var sun = OfDateFrame.At(Tt(check)).Sun;
                Assert.Equal(198.37813, sun.RightAscension.Degrees, 1e-3);
                Assert.Equal(-7.78381, sun.Declination.Degrees, 1e-3);
                check.Near("R", SunDistance.AstronomicalUnits(Tt(check)), 2e-4);
                break;
            case "nt-meeus-47a":
                var (longitude, latitude, far) = MoonPlace.OfMeanEquinox(Tt(check));
                check.NearAngle("lambda_deg", Angle.FromRadians(longitude));
                check.NearAngle("beta_deg", Angle.FromRadians(latitude));
                check.Near("dist_km", far);
                var frame = OfDateFrame.At(Tt(check));
                check.NearAngle(
                    "app_lambda_deg",
                    Angle.FromRadians(longitude) + frame.NutationInLongitude
                );
                var moon = MoonPlace.At(frame);
                check.NearAngle("ra", moon.Direction.RightAscension);
                check.NearAngle("dec", moon.Direction.Declination);
                break;
            default:
                Assert.Fail($"Nothing answers {id}.");
                break;
        }
    }

    private static void Moon(Check check)
    {
        var moment = SiteMoment.Of(check.Site, check.Utc);
        var centre = MoonPlace.At(moment.Frame);
        check.NearAngle("ra", centre.Direction.RightAscension, 0.001);
        check.NearAngle("dec", centre.Direction.Declination, 0.001);
        check.Near("dist_km", centre.DistanceKilometres, 1.0);
        check.Near("elongation", centre.Direction.SeparationTo(moment.Frame.Sun).Degrees, 0.002);
        check.Near("illuminated", centre.IlluminatedFraction, 0.0002);
        check.Near("topo_alt_no_refraction", moment.Moon.Place.TrueAltitude.Degrees, 0.001);
        check.NearAngle("topo_az", moment.Moon.Place.Azimuth, 0.003);
    }

    private static void Twilight(Check check)
    {
        var night = NightOfSunTests.Night(check.Site, check.Text("night_of"));
        var below = check.In("sun_alt_deg") < -15.0 ? night.Dark : night.BelowNautical;
        if (check.Expect.GetProperty("evening_utc").ValueKind == JsonValueKind.Null)
        {
            Assert.Empty(below);
            return;
        }

        var interval = Assert.Single(below);
        check.NearTime("evening_utc", interval.Start);
        check.NearTime("morning_utc", interval.End);
    }

    private static void NightsWithoutDarkness(Check check)
    {
        var first = new DateOnly((int)check.In("year"), 1, 1);
        var bright = Enumerable
            .Range(0, 365)
            .Select(first.AddDays)
            .Where(evening => NightOfSun.Of(check.Site, evening).Dark.Count == 0)
            .Select(evening => evening.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture))
            .ToList();
        check.Near("nights", bright.Count, 0.0);
        Assert.Equal(check.Expect.GetProperty("first_night").GetString(), bright[0]);
        Assert.Equal(check.Expect.GetProperty("last_night").GetString(), bright[^1]);
    }

    private static void Star(Check check)
    {
        var moment = SiteMoment.Of(check.Site, check.Utc);
        var icrs = SkyDirection.FromDegrees(check.In("ra_icrs"), check.In("dec_icrs"));
        var ofDate = moment.Frame.ToOfDate(icrs);
        var place = moment.See(icrs);
        check.NearAngle("gast_deg", Apparent(check.Utc), 1e-5);
        check.NearAngle("ra_of_date", ofDate.RightAscension, 1e-5);
        check.NearAngle("dec_of_date", ofDate.Declination, 1e-5);
        check.NearAngle("alt_no_refraction", place.TrueAltitude, 5e-4);
        check.NearAngle("az", place.Azimuth, 5e-4);
    }

    private static void Transit(Check check)
    {
        var near = TestTable.Time(check.Text("near"));
        var frame = OfDateFrame.At(TerrestrialTime.FromUtc(near));
        var icrs = frame.ToIcrs(
            SkyDirection.FromDegrees(check.In("ra_of_date"), check.In("dec_of_date"))
        );
        var transit = RiseAndSet.NextTransit(icrs, check.Site, near);
        check.NearTime("transit_utc", transit);
        check.Near(
            "transit_alt",
            SiteMoment.Of(check.Site, transit).See(icrs).TrueAltitude.Degrees
        );
    }

    private static Angle Apparent(DateTime utc) =>
        SiderealTime.GreenwichApparent(utc, OfDateFrame.At(TerrestrialTime.FromUtc(utc)));

    private static DateTime Ut(Check check) => TestTable.Time(check.Text("ut"));

    private static TerrestrialTime Tt(Check check) =>
        TerrestrialTime.FromJulianDate(check.In("jd_tt"));
}
