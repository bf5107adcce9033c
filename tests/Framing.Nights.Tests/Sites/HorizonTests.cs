using System.Text.Json;
using Framing.Sky;

namespace Framing.Nights.Tests;

public sealed class HorizonTests
{
    [Fact]
    public void AltitudeAt_BetweenPoints_ChangesEvenly()
    {
        var entry = TestTable.Checks("night.checks.json")["nt-horizon-interp"];
        var horizon = Profile(entry.Inputs);
        var azimuths = Numbers(entry.Inputs.GetProperty("az"));
        var expected = Numbers(entry.Expect.GetProperty("alt"));
        Assert.Equal(6, expected.Count);
        for (var i = 0; i < expected.Count; i++)
        {
            Assert.Equal(
                expected[i],
                horizon.AltitudeAt(Angle.FromDegrees(azimuths[i])).Degrees,
                1e-9
            );
            Assert.Equal(
                expected[i],
                horizon.AltitudeAt(Angle.FromDegrees(azimuths[i] - 720.0)).Degrees,
                1e-9
            );
        }
    }

    [Theory]
    [InlineData("nt-horizon-orion")]
    [InlineData("nt-horizon-m31")]
    public void StarClear_OverAProfile_IsWhenTheCheckSays(string id)
    {
        var entry = TestTable.Checks("night.checks.json")[id];
        var inputs = entry.Inputs;
        var start = TestTable.Time(inputs.GetProperty("start_utc").GetString()!);
        var end = start.AddHours(inputs.GetProperty("hours").GetDouble());
        var site = Airless(
            inputs.GetProperty("lat").GetDouble(),
            inputs.GetProperty("lon_east").GetDouble()
        ) with
        {
            Horizon = Profile(inputs),
        };
        var icrs = OfDateFrame
            .At(TerrestrialTime.FromUtc(start))
            .ToIcrs(
                SkyDirection.FromDegrees(
                    inputs.GetProperty("ra_of_date").GetDouble(),
                    inputs.GetProperty("dec_of_date").GetDouble()
                )
            );
        var clear = RiseAndSet.StarClear(icrs, site, Angle.FromDegrees(-90.0), start, end);
        var found = clear
            .SelectMany(stretch =>
                new[]
                {
                    (stretch.Start, Word: stretch.HeldBefore ? "" : "rise"),
                    (stretch.End, Word: stretch.HoldsAfter ? "" : "set"),
                }
            )
            .Where(item => item.Word.Length > 0)
            .ToList();
        var expected = entry.Expect.GetProperty("crossings").EnumerateArray();
        Assert.Equal(2, expected.Count());
        Assert.Equal(2, found.Count);
        foreach (var (judge, ours) in expected.Zip(found))
        {
            Assert.Equal(judge[1].GetString(), ours.Word);
            var time = TestTable.Time(judge[0].GetString()!);
            Assert.InRange(Math.Abs((ours.Item1 - time).TotalSeconds), 0.0, 10.0);
        }
    }

    [Fact]
    public void StarClear_WithATooth_ComesInTwoStretches()
    {
        // A tower from azimuth 178° to 182°, 80° high, hides what culminates behind it.
        var site = Airless(46.2, 8.1) with
        {
            Horizon = Of((0, 0), (177.9, 0), (178, 80), (182, 80), (182.1, 0)),
        };
        var start = TestTable.Time("2026-12-05T12:00:00Z");
        var star = SkyDirection.FromDegrees(80.0, 0.0);
        var clear = RiseAndSet.StarClear(star, site, Angle.Zero, start, start.AddDays(1.0));
        Assert.Equal(2, clear.Count);
        Assert.InRange((clear[1].Start - clear[0].End).TotalMinutes, 10.0, 13.0);
        var high = RiseAndSet.StarClear(
            star,
            site,
            Angle.FromDegrees(20.0),
            start,
            start.AddDays(1.0)
        );
        Assert.True(high[0].Start > clear[0].Start);
        Assert.Equal(high[0].End, clear[0].End);
    }

    [Fact]
    public void AltitudeAt_WithACompassOffset_TurnsTheSkylineEast()
    {
        var measured = new HorizonPoint[]
        {
            new(Angle.FromDegrees(350.0), Angle.FromDegrees(10.0)),
            new(Angle.FromDegrees(90.0), Angle.FromDegrees(20.0)),
        };
        var turned = new Horizon(measured, Angle.FromDegrees(15.0));
        Assert.Equal(10.0, turned.AltitudeAt(Angle.FromDegrees(5.0)).Degrees, 1e-9);
        Assert.Equal(20.0, turned.AltitudeAt(Angle.FromDegrees(105.0)).Degrees, 1e-9);
        Assert.Equal(5.0, turned.Points[0].Azimuth.Degrees, 1e-9);
        Assert.Equal(turned, new(measured.Reverse(), Angle.FromDegrees(375.0 - 360.0)));
    }

    [Fact]
    public void Flat_Always_IsZeroAllRound()
    {
        Assert.True(Horizon.Flat.IsFlat);
        Assert.Empty(Horizon.Flat.Points);
        Assert.Equal(Angle.Zero, Horizon.Flat.AltitudeAt(Angle.FromDegrees(123.0)));
    }

    [Fact]
    public void New_OfImpossiblePoints_IsRefused()
    {
        Assert.Throws<ArgumentException>(() => Of((10, 5)));
        Assert.Throws<ArgumentException>(() => Of((10, 5), (370, 6)));
        Assert.Throws<ArgumentException>(() => Of((10, 5), (20, 95)));
    }

    private static Horizon Of(params (double Azimuth, double Altitude)[] points) =>
        new(
            points.Select(point => new HorizonPoint(
                Angle.FromDegrees(point.Azimuth),
                Angle.FromDegrees(point.Altitude)
            )),
            Angle.Zero
        );

    private static Horizon Profile(JsonElement inputs) =>
        Of([
            .. inputs
                .GetProperty("profile")
                .EnumerateArray()
                .Select(point => (point[0].GetDouble(), point[1].GetDouble())),
        ]);

    private static List<double> Numbers(JsonElement list) =>
        [.. list.EnumerateArray().Select(number => number.GetDouble())];

    private static ObservingSite Airless(double latitude, double longitude) =>
        new(
            Angle.FromDegrees(latitude),
            Angle.FromDegrees(longitude),
            0.0,
            new AirConditions(0.0, 10.0)
        );
}
