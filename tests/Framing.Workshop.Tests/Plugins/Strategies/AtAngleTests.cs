using Framing.Sky;

namespace Framing.Workshop.Tests;

public sealed class AtAngleTests
{
    [Theory]
    [InlineData(0.0)]
    [InlineData(21.2)]
    [InlineData(201.2)]
    [InlineData(359.9)]
    public void Choose_AnyPresentAngle_TakesTheOneGiven(double degrees) =>
        Assert.Equal(
            PositionAngle.FromDegrees(degrees),
            Ask.Rotation(
                "at-angle",
                Questions.Rotation(present: PositionAngle.FromDegrees(100.0)),
                ("angle_deg", degrees)
            ).Angle
        );
}
