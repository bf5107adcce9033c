using Framing.Sky;

namespace Framing.Nights.Tests;

public sealed class DarkTimeTests
{
    // Lowest Sun of 2026-06-21 by latitude, ERFA: 48 -18.20, 52 -14.56, 56 -10.5, 60 -6.5, 69.7 +3.1.
    [Theory]
    [InlineData(45.0, -18.0, -18.0, true, 1)]
    [InlineData(52.0, -18.0, -12.0, false, 1)]
    [InlineData(56.0, -18.0, -6.0, false, 1)]
    [InlineData(56.0, -6.0, -6.0, true, 1)]
    [InlineData(69.7, -18.0, -6.0, false, 0)]
    public void Of_AMidsummerNight_FallsBackToTheNextTwilight(
        double latitude,
        double wished,
        double below,
        bool asWished,
        int stretches
    )
    {
        var site = new ObservingSite(
            Angle.FromDegrees(latitude),
            Angle.Zero,
            0.0,
            AirConditions.Usual
        );
        var night = NightOfSunTests.Night(site, "2026-06-21");
        var dark = DarkTime.Of(night, Angle.FromDegrees(wished));
        Assert.Equal(below, dark.SunBelow.Degrees, 1e-9);
        Assert.Equal(asWished, dark.IsAsWished);
        Assert.Equal(stretches, dark.Stretches.Count);
        foreach (var stretch in dark.Stretches)
        {
            var middle = stretch.Start + (stretch.Length / 2.0);
            Assert.True(SiteMoment.Of(site, middle).Sun.TrueAltitude.Degrees < below);
        }

        Assert.Equal(dark.Stretches.Sum(s => s.Length.TotalHours), dark.Length.TotalHours, 1e-9);
    }
}
