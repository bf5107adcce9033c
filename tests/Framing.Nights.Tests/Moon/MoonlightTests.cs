using Framing.Sky;

namespace Framing.Nights.Tests;

public sealed class MoonlightTests
{
    private static readonly ObservingSite Site = new(
        Angle.FromDegrees(52.0),
        Angle.FromDegrees(5.0),
        0.0,
        AirConditions.Usual
    );

    // The full Moon of nt-moon-2026-11-24, 60° high.
    private static readonly SiteMoment Moment = SiteMoment.Of(
        Site,
        TestTable.Time("2026-11-24T22:30:00Z")
    );

    [Fact]
    public void At_FullMoon_LiesAmongWhatObserversReport()
    {
        // A coarse guard, not a check of the formula: reports of the sky in V well away from a high full Moon run from 18 to 20
        // mag/arcsec² (from memory; Walker 1987 gives 20.0).
        var light = Moonlight.At(Moment.Moon, Place(70.0), Angle.FromDegrees(60.0), 21.6);
        Assert.InRange(21.6 - light.Magnitudes, 18.0, 20.0);
        Assert.Equal(light.Factor, Math.Pow(10.0, 0.4 * light.Magnitudes), 1e-9);
    }

    [Fact]
    public void At_CloserToTheMoon_IsBrighter()
    {
        var before = double.PositiveInfinity;
        foreach (var apart in new[] { 2.0, 6.0, 15.0, 30.0, 60.0, 90.0 })
        {
            var factor = Moonlight
                .At(Moment.Moon, Place(50.0), Angle.FromDegrees(apart), 21.0)
                .Factor;
            Assert.InRange(factor, 1.0, before);
            before = factor;
        }

        var half = Moment.Moon with { IlluminatedFraction = 0.5 };
        Assert.True(
            Moonlight.At(half, Place(50.0), Angle.FromDegrees(60.0), 21.0).Factor < before * 0.5
        );
    }

    [Fact]
    public void At_WithEitherBelowTheHorizon_IsNone()
    {
        Assert.Equal(
            1.0,
            Moonlight.At(Moment.Moon, Place(-5.0), Angle.FromDegrees(60.0), 21.0).Factor
        );
        var below = Moment.Moon with { Place = Place(-5.0) };
        Assert.Equal(1.0, Moonlight.At(below, Place(50.0), Angle.FromDegrees(60.0), 21.0).Factor);
    }

    // ERFA 2.0.0, moon98, epv00, ecm06: elongations 180.0°, 180.0°, 129.9° and 269.9°, lit 0.9986, 0.9981, 0.8208 and 0.5020.
    [Theory]
    [InlineData("2026-01-03T10:03:00Z", "full, 100 % lit")]
    [InlineData("2026-11-24T14:54:00Z", "full, 100 % lit")]
    [InlineData("2026-11-20T21:00:00Z", "waxing gibbous, 82 % lit")]
    [InlineData("2026-12-01T06:00:00Z", "last quarter, 50 % lit")]
    public void Words_OfAPhase_NameIt(string utc, string words) =>
        Assert.Equal(
            words,
            MoonPhase.At(OfDateFrame.At(TerrestrialTime.FromUtc(TestTable.Time(utc)))).Words
        );

    private static HorizontalPlace Place(double altitude) =>
        new(
            Angle.FromDegrees(altitude),
            Angle.FromDegrees(altitude),
            Angle.FromDegrees(180.0),
            Angle.Zero,
            Angle.Zero
        );
}
