using Framing.Sky;

namespace Framing.Nights.Tests;

/// <summary>Entries that want more than one call of the room: SOFA's full models, and a planet that moves by a table.</summary>
internal static class FullModels
{
    private const double KilometresPerAu = 149_597_870.7;

    /// <summary>moon98: the Moon against the Earth's centre in the GCRS, without light time.</summary>
    public static void Moon(Check check)
    {
        var frame = OfDateFrame.At(TerrestrialTime.FromJulianDate(2400000.5 + check.In("mjd_tt")));
        var expected = new Vector3D(Out(check, "x_au"), Out(check, "y_au"), Out(check, "z_au"));
        var ours = MoonPlace.At(frame);

        // The frame's own way includes the year's aberration, which a body that travels with the Earth does not have: it is
        // taken off first (20.49552″, e = 0.0167; longitude of the Sun against J2000 from the frame, 0.2″).
        var direction = expected * (1.0 / expected.Length);
        var sun = frame.ToIcrs(frame.Sun);
        const double tilt = 23.4392911 * Math.PI / 180.0;
        var longitude = Math.Atan2(
            (sun.Vector.Y * Math.Cos(tilt)) + (sun.Vector.Z * Math.Sin(tilt)),
            sun.Vector.X
        );
        const double perihelion = 102.94 * Math.PI / 180.0;
        var k = Angle.FromArcseconds(20.49552).Radians;
        var x = k * (Math.Sin(longitude) - (0.0167 * Math.Sin(perihelion)));
        var y = -k * (Math.Cos(longitude) - (0.0167 * Math.Cos(perihelion)));
        var still = direction - new Vector3D(x, y * Math.Cos(tilt), y * Math.Sin(tilt));
        var turned = frame.ToOfDate(SkyDirection.FromVector(still));

        // 0.0005° and 1 km are what MoonPlace promises one light time earlier, in which the Moon moves by 0.0002°.
        Assert.InRange(turned.SeparationTo(ours.Direction).Degrees, 0.0, 0.0007);
        Assert.Equal(expected.Length * KilometresPerAu, ours.DistanceKilometres, 1.5);
    }

    /// <summary>epv00: the Earth against the Sun.</summary>
    public static void Earth(Check check)
    {
        // TDB for TT: 2 ms.
        var frame = OfDateFrame.At(TerrestrialTime.FromJulianDate(2400000.5 + check.In("mjd_tdb")));
        var earth = check
            .Expect.GetProperty("earth_helio")
            .EnumerateArray()
            .Select(part => part.GetDouble())
            .ToArray();
        var expected = new Vector3D(-earth[0], -earth[1], -earth[2]);

        // The frame promises 3″, SunDistance 0.0002 au.
        var sun = frame.ToIcrs(frame.Sun);
        Assert.InRange(sun.SeparationTo(SkyDirection.FromVector(expected)).Arcseconds, 0.0, 3.0);
        Assert.Equal(expected.Length, SunDistance.AstronomicalUnits(frame.Time), 2e-4);
    }

    /// <summary>Meeus 15.a: a planet from three places a day apart, crossings found by the room's own search.</summary>
    public static void Venus(Check check)
    {
        var start = TestTable.Time("1988-03-20T00:00:00Z");
        var ra = List(check, "ra_deg");
        var dec = List(check, "dec_deg");
        var latitude = 42.0 + (20.0 / 60.0);
        var west = 71.0 + (5.0 / 60.0);
        double HourAngle(DateTime utc, out double declination)
        {
            // The table runs in dynamical time, 56 s ahead then.
            var day = (utc - start).TotalDays;
            var n = day + (56.0 / 86400.0);
            declination = At(dec, n);
            return check.In("gast0_deg") + (360.985647 * day) - west - At(ra, n);
        }

        double Height(DateTime utc)
        {
            var hour = double.DegreesToRadians(HourAngle(utc, out var declination));
            var (sinLatitude, cosLatitude) = Math.SinCos(double.DegreesToRadians(latitude));
            var (sin, cos) = Math.SinCos(double.DegreesToRadians(declination));
            var up = (sinLatitude * sin) + (cosLatitude * cos * Math.Cos(hour));
            return double.RadiansToDegrees(Math.Asin(up)) - check.In("h0_deg");
        }

        var crossings = Crossings.Between(Height, start, start.AddDays(1.0));
        Assert.Equal(2, crossings.Count);
        foreach (var (time, rising) in crossings)
        {
            check.Near(rising ? "rise_frac" : "set_frac", (time - start).TotalDays);
        }

        var transits = Crossings.Between(
            utc => Math.Sin(double.DegreesToRadians(HourAngle(utc, out _))),
            start,
            start.AddDays(1.0)
        );
        check.Near(
            "transit_frac",
            (Assert.Single(transits, crossing => crossing.Rising).Time - start).TotalDays
        );
    }

    private static double At(double[] y, double n) =>
        y[1] + (n / 2.0 * ((y[1] - y[0]) + (y[2] - y[1]) + (n * (y[2] - (2.0 * y[1]) + y[0]))));

    private static double[] List(Check check, string name) =>
        [.. check.Inputs.GetProperty(name).EnumerateArray().Select(number => number.GetDouble())];

    private static double Out(Check check, string name) =>
        check.Expect.GetProperty(name).GetDouble();
}
