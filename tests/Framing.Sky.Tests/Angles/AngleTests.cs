using FsCheck.Xunit;

namespace Framing.Sky.Tests;

public sealed class AngleTests
{
    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void From_NotFinite_Refused(double value)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Angle.FromRadians(value));
        Assert.Throws<ArgumentOutOfRangeException>(() => Angle.FromDegrees(value));
        Assert.Throws<ArgumentOutOfRangeException>(() => Angle.FromHours(value));
        Assert.Throws<ArgumentOutOfRangeException>(() => Angle.FromArcminutes(value));
        Assert.Throws<ArgumentOutOfRangeException>(() => Angle.FromArcseconds(value));
    }

    [Fact]
    public void Arithmetic_NotFinite_Throws()
    {
        var angle = Angle.FromDegrees(10.0);
        Assert.Throws<ArithmeticException>(() => angle / 0.0);
        Assert.Throws<ArithmeticException>(() => angle * double.NaN);
        Assert.Throws<ArithmeticException>(() => double.PositiveInfinity * angle);
    }

    [Fact]
    public void Units_OneAngle_AllAgree()
    {
        var angle = Angle.FromDegrees(30.0);
        Assert.Equal(Math.PI / 6.0, angle.Radians, 1e-16);
        Assert.Equal(2.0, angle.Hours, 1e-15);
        Assert.Equal(1800.0, angle.Arcminutes, 1e-12);
        Assert.Equal(108_000.0, angle.Arcseconds, 1e-10);
    }

    [Property(MaxTest = 1000, Arbitrary = [typeof(Arbitraries)])]
    public void From_AnyUnit_ReadsBack(Angle angle)
    {
        var size = Math.Abs(angle.Radians) * 1e-15;
        Assert.Equal(angle.Radians, Angle.FromDegrees(angle.Degrees).Radians, size);
        Assert.Equal(angle.Radians, Angle.FromHours(angle.Hours).Radians, size);
        Assert.Equal(angle.Radians, Angle.FromArcminutes(angle.Arcminutes).Radians, size);
        Assert.Equal(angle.Radians, Angle.FromArcseconds(angle.Arcseconds).Radians, size);
    }

    [Property(MaxTest = 2000, Arbitrary = [typeof(Arbitraries)])]
    public void Wrapped_AnyAngle_IsTheSameDirectionInRange(Angle angle)
    {
        Assert.True(angle.Wrapped.Degrees is >= 0.0 and < 360.0);
        Assert.True(angle.Wrapped.Hours is >= 0.0 and < 24.0);
        Assert.True(angle.WrappedSigned.Degrees is > -180.0 and <= 180.0);
        Assert.False(double.IsNegative(angle.Wrapped.Radians));
        SameDirection(angle, angle.Wrapped);
        SameDirection(angle, angle.WrappedSigned);
    }

    [Theory]
    [InlineData(0.0, 0.0, 0.0)]
    [InlineData(360.0, 0.0, 0.0)]
    [InlineData(-1e-30, 0.0, -1e-30)]
    [InlineData(180.0, 180.0, 180.0)]
    [InlineData(-180.0, 180.0, 180.0)]
    [InlineData(190.0, 190.0, -170.0)]
    [InlineData(-725.0, 355.0, -5.0)]
    public void Wrapped_Borders_AsPromised(double degrees, double wrapped, double signed)
    {
        var angle = Angle.FromDegrees(degrees);
        Assert.Equal(wrapped, angle.Wrapped.Degrees, 1e-12);
        Assert.Equal(signed, angle.WrappedSigned.Degrees, 1e-12);
    }

    [Fact]
    public void Wrapped_StepsBelowAFullTurn_NeverReads360()
    {
        var value = Math.Tau;
        for (var i = 0; i < 8; i++)
        {
            var wrapped = Angle.FromRadians(value).Wrapped;
            Assert.True(wrapped.Degrees < 360.0);
            Assert.True(wrapped.Hours < 24.0);
            value = Math.BitDecrement(value);
        }
    }

    [Fact]
    public void Wrapped_NegativeZero_IsPlainZero()
    {
        Assert.False(double.IsNegative(Angle.FromRadians(-0.0).Wrapped.Radians));
        Assert.False(double.IsNegative(Angle.FromRadians(-0.0).WrappedSigned.Radians));
        Assert.Equal("0°", Angle.FromRadians(-0.0).ToString());
        Assert.Equal("0°", Angle.FromRadians(-1e-12).ToString());
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void Arithmetic_TwoAngles_FollowsTheNumbers(Angle left, Angle right)
    {
        Assert.Equal(left.Radians + right.Radians, (left + right).Radians);
        Assert.Equal(left.Radians - right.Radians, (left - right).Radians);
        Assert.Equal(-left.Radians, (-left).Radians);
        Assert.Equal(left.Radians * 2.5, (left * 2.5).Radians);
        Assert.Equal(left * 2.5, 2.5 * left);
        Assert.Equal(left.Radians / 2.5, (left / 2.5).Radians);
        Assert.Equal(left.Radians / right.Radians, left / right);
        Assert.Equal(left.Radians < right.Radians, left < right);
        Assert.Equal(left.Radians >= right.Radians, left >= right);
        Assert.Equal(left <= right, right >= left);
        Assert.Equal(
            left < right ? -1
                : left > right ? 1
                : 0,
            left.CompareTo(right)
        );
        Assert.Equal(Math.Min(left.Radians, right.Radians), Angle.Min(left, right).Radians);
        Assert.Equal(Math.Max(left.Radians, right.Radians), Angle.Max(left, right).Radians);
        Assert.Equal(Math.Abs(left.Radians), left.Magnitude.Radians);
        Assert.Equal(left.Radians == right.Radians, left == right);
    }

    private static void SameDirection(Angle left, Angle right)
    {
        // Rounding of the full turn itself, once a turn, and the two steps below it that count as zero.
        var tolerance = 4e-15 * (1.0 + Math.Abs(left.Radians));
        Assert.Equal(Math.Cos(left.Radians), Math.Cos(right.Radians), tolerance);
        Assert.Equal(Math.Sin(left.Radians), Math.Sin(right.Radians), tolerance);
    }
}
