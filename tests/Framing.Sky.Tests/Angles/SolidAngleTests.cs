namespace Framing.Sky.Tests;

public sealed class SolidAngleTests
{
    [Fact]
    public void SquareDegrees_WholeSphere_AsKnown()
    {
        // 4 pi (180 / pi)^2 = 129600 / pi.
        var sphere = SolidAngle.FromSteradians(4.0 * Math.PI);
        Assert.Equal(129_600.0 / Math.PI, sphere.SquareDegrees, 1e-9);
        Assert.Equal(129_600.0 / Math.PI * 3600.0, sphere.SquareArcminutes, 1e-5);
        Assert.Equal("41252.961249 sq deg", sphere.ToString());
    }

    [Fact]
    public void Arithmetic_Areas_AddUp()
    {
        var one = SolidAngle.FromSquareDegrees(1.0);
        Assert.Equal(1.0, one.SquareDegrees, 1e-15);
        Assert.Equal(2.0, (one + one).SquareDegrees, 1e-15);
        Assert.Equal(default, one - one);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.NegativeInfinity)]
    public void From_NotFinite_Refused(double value)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SolidAngle.FromSteradians(value));
        Assert.Throws<ArgumentOutOfRangeException>(() => SolidAngle.FromSquareDegrees(value));
    }
}
