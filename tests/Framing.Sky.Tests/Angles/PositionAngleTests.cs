using FsCheck.Xunit;

namespace Framing.Sky.Tests;

public sealed class PositionAngleTests
{
    [Theory]
    [InlineData(0.0, 0.0)]
    [InlineData(-30.0, 330.0)]
    [InlineData(360.0, 0.0)]
    [InlineData(725.0, 5.0)]
    public void FromDegrees_AnyTurn_Wrapped(double degrees, double expected) =>
        Assert.Equal(expected, PositionAngle.FromDegrees(degrees).Degrees, 1e-12);

    [Fact]
    public void Default_IsNorth()
    {
        Assert.Equal(PositionAngle.North, default);
        Assert.Equal(90.0, PositionAngle.East.Degrees, 1e-13);
        Assert.Equal("90°", PositionAngle.East.ToString());
        Assert.Equal("0°", PositionAngle.FromDegrees(-1e-9).ToString());
    }

    [Property(MaxTest = 1000, Arbitrary = [typeof(Arbitraries)])]
    public void TurnTo_ThenTurnedBy_Arrives(PositionAngle from, PositionAngle to)
    {
        var turn = from.TurnTo(to);
        Assert.True(turn.Degrees is > -180.0 and <= 180.0);
        Assert.Equal(0.0, from.TurnedBy(turn).TurnTo(to).Degrees, 1e-12);
    }

    [Property(MaxTest = 1000, Arbitrary = [typeof(Arbitraries)])]
    public void FrameTurnTo_ThenTurnedBy_IsTheSameFrame(PositionAngle from, PositionAngle to)
    {
        var turn = from.FrameTurnTo(to);
        Assert.True(turn.Degrees is > -90.0 and <= 90.0);
        var left = Math.Abs(from.TurnedBy(turn).TurnTo(to).Degrees);
        Assert.True(left < 1e-12 || Math.Abs(left - 180.0) < 1e-12);
    }

    [Theory]
    [InlineData(10.0, 190.0, 0.0)]
    [InlineData(0.0, 90.0, 90.0)]
    [InlineData(90.0, 0.0, 90.0)]
    [InlineData(350.0, 15.0, 25.0)]
    [InlineData(10.0, 165.0, -25.0)]
    public void FrameTurnTo_HalfATurnCountsAsTheSame(double from, double to, double expected) =>
        Assert.Equal(
            expected,
            PositionAngle.FromDegrees(from).FrameTurnTo(PositionAngle.FromDegrees(to)).Degrees,
            1e-12
        );

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void Opposite_Twice_IsTheSame(PositionAngle angle)
    {
        Assert.Equal(180.0, angle.TurnTo(angle.Opposite).Magnitude.Degrees, 1e-12);
        Assert.Equal(0.0, angle.Opposite.Opposite.TurnTo(angle).Degrees, 1e-12);
    }
}
