namespace Framing.Drawing.Tests;

public sealed class GridStepTests
{
    [Theory]
    [InlineData(3600, 0, "0h")]
    [InlineData(3600, -3600, "23h")]
    [InlineData(3600, 90000, "1h")]
    [InlineData(120, 20160, "5h 36m")]
    [InlineData(120, 60, "0h 01m")]
    [InlineData(10, 86390, "23h 59m 50s")]
    public void WriteTime_AsFineAsTheStep(int step, int seconds, string expected) =>
        Assert.Equal(expected, new GridStep(step).WriteTime(seconds));

    [Theory]
    [InlineData(3600, 219600, "+61°")]
    [InlineData(3600, 0, "0°")]
    [InlineData(1200, -1200, "−0° 20′")]
    [InlineData(1200, 220800, "+61° 20′")]
    [InlineData(10, -219630, "−61° 00′ 30″")]
    public void WriteArc_AsFineAsTheStep(int step, int arcseconds, string expected) =>
        Assert.Equal(expected, new GridStep(step).WriteArc(arcseconds));

    [Theory]
    [InlineData(0.2, 1)]
    [InlineData(61.0, 120)]
    [InlineData(3600.0, 3600)]
    [InlineData(1e9, 10800)]
    public void OfTime_SmallestThatIsEnough(double least, int expected) =>
        Assert.Equal(expected, GridStep.OfTime(least).Units);
}
