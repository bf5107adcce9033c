using Framing.Sky;

namespace Framing.Nights.Tests;

public sealed class RefractionTests
{
    [Fact]
    public void AtTrue_AndAtApparent_UndoEachOther()
    {
        for (var altitude = 0.0; altitude <= 90.0; altitude += 0.5)
        {
            var seen = Angle.FromDegrees(altitude);
            var there = seen - Refraction.AtApparent(seen, AirConditions.Usual);
            var back = there + Refraction.AtTrue(there, AirConditions.Usual);

            // Meeus, chapter 16: the two formulas agree to 0.1′ (4″ named there is from memory).
            Assert.InRange(Math.Abs((back - seen).Arcminutes), 0.0, 0.12);
        }
    }

    [Fact]
    public void AtTrue_FromNadirToZenith_KeepsTheOrderOfAltitudes()
    {
        var before = double.NegativeInfinity;
        for (var altitude = -90.0; altitude <= 90.0; altitude += 0.05)
        {
            var angle = Angle.FromDegrees(Math.Min(altitude, 90.0));
            var lift = Refraction.AtTrue(angle, AirConditions.Usual);
            Assert.InRange(lift.Arcminutes, 0.0, 40.0);
            Assert.True((angle + lift).Degrees > before);
            before = (angle + lift).Degrees;
        }
    }

    [Fact]
    public void AtTrue_InThinWarmAir_IsWeaker()
    {
        var angle = Angle.FromDegrees(20.0);
        var usual = Refraction.AtTrue(angle, AirConditions.Usual).Arcminutes;
        var thin = Refraction.AtTrue(angle, new(505.0, 10.0)).Arcminutes;
        var warm = Refraction.AtTrue(angle, new(1010.0, 30.0)).Arcminutes;

        // Meeus, chapter 16: pressure over 1010 hPa, times 283 over 273 plus the temperature.
        Assert.Equal(usual / 2.0, thin, 1e-12);
        Assert.Equal(usual * 283.0 / 303.0, warm, 1e-12);
    }

    [Fact]
    public void At_BelowTheHorizon_IsNone() => Assert.Null(Airmass.At(Angle.FromDegrees(-0.1)));

    [Theory]
    [InlineData(-1.0, 10.0)]
    [InlineData(double.NaN, 10.0)]
    [InlineData(1010.0, -273.0)]
    public void AirConditions_OfNoAirOnEarth_AreRefused(double pressure, double temperature) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new AirConditions(pressure, temperature));

    [Theory]
    [InlineData(95.0, 0.0)]
    [InlineData(45.0, 20000.0)]
    public void ObservingSite_NotOnTheGround_IsRefused(double latitude, double metres) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new ObservingSite(Angle.FromDegrees(latitude), Angle.Zero, metres, AirConditions.Usual)
        );
}
