namespace Framing.Sky.Tests;

public sealed class PositionAngleFrameTests
{
    [Theory]
    [InlineData(0.0, null, 0.0)]
    [InlineData(179.0, null, 179.0)]
    [InlineData(180.0, null, 0.0)]
    [InlineData(300.0, null, 120.0)]
    [InlineData(179.999999999999, null, 0.0)]
    [InlineData(10.0, 20.0, 10.0)]
    [InlineData(10.0, 200.0, 190.0)]
    [InlineData(350.0, 5.0, 350.0)]
    [InlineData(170.0, 5.0, 350.0)]
    [InlineData(100.0, 10.0, 100.0)]
    public void FrameNear_AnAngle_IsTheOneOfTwoOppositesToName(
        double degrees,
        double? present,
        double expected
    ) =>
        Assert.Equal(
            expected,
            PositionAngle
                .FromDegrees(degrees)
                .FrameNear(present is { } now ? PositionAngle.FromDegrees(now) : null)
                .Degrees,
            9
        );
}
