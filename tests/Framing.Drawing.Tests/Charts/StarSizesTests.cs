namespace Framing.Drawing.Tests;

public sealed class StarSizesTests
{
    [Fact]
    public void RadiusOf_AboveTheFloor_AreaFollowsLight()
    {
        var sizes = new StarSizes(11.0, 8.0, 1.0);

        // Pogson: 2.5 magnitudes are a factor of 10 in light, and so in area.
        Assert.Equal(10.0, Math.Pow(sizes.RadiusOf(4.0) / sizes.RadiusOf(6.5), 2.0), 1e-9);
        Assert.Equal(1.0, sizes.RadiusOf(8.0), 1e-9);
        Assert.Equal(1.0, sizes.RadiusOf(11.0), 1e-9);
    }

    [Fact]
    public void For_OneVeryBrightStar_IsNotLargerThanTheLargest()
    {
        var sizes = StarSizes.For([0.0, 9.0, 9.5, 10.0], 1000, 1.0, 16.0);
        Assert.InRange(sizes.RadiusOf(0.0), 15.0, 16.0 + 1e-9);
        Assert.Equal(10.0, sizes.Faintest);
    }

    [Fact]
    public void For_TooMany_LimitIsARoundHalfMagnitudeThatKeepsWithinTheMost()
    {
        double[] magnitudes = [.. Enumerable.Range(0, 1000).Select(i => 5.0 + (i * 0.006))];
        var sizes = StarSizes.For(magnitudes, 300, 1.0, 16.0);
        Assert.Equal(6.5, sizes.Faintest);
        Assert.True(magnitudes.Count(magnitude => magnitude <= sizes.Faintest) <= 300);
    }

    [Fact]
    public void OpacityStepOf_FainterStars_ShineLess()
    {
        var sizes = new StarSizes(11.0, 8.0, 1.0);
        Assert.Equal(1.0, StarSizes.OpacityOf(sizes.OpacityStepOf(3.0)), 1e-9);
        Assert.True(sizes.OpacityStepOf(9.0) > sizes.OpacityStepOf(10.5));
    }
}
