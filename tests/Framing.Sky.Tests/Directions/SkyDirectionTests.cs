using FsCheck.Xunit;

namespace Framing.Sky.Tests;

public sealed class SkyDirectionTests
{
    [Property(MaxTest = 2000, Arbitrary = [typeof(Arbitraries)])]
    public void FromRaDec_RightAscensionAndDeclination_ReadBack(SkyDirection direction)
    {
        var back = SkyDirection.FromRaDec(direction.RightAscension, direction.Declination);
        Assert.Equal(0.0, back.SeparationTo(direction).Radians, 1e-15);
        Assert.True(direction.RightAscension.Degrees is >= 0.0 and < 360.0);
        Assert.True(direction.Declination.Degrees is >= -90.0 and <= 90.0);
        Assert.Equal(1.0, direction.Vector.Length, 4e-16);
    }

    [Theory]
    [InlineData(90.0)]
    [InlineData(-90.0)]
    public void FromDegrees_AtAPole_KeepsItsRightAscension(double declination)
    {
        for (var ra = 0.0; ra < 360.0; ra += 7.5)
        {
            var pole = SkyDirection.FromDegrees(ra, declination);
            Assert.Equal(ra, pole.RightAscension.Degrees, 1e-10);
            Assert.Equal(declination, pole.Declination.Degrees);
        }
    }

    [Fact]
    public void FromRaDec_ARoundingStepBeyondThePole_KeepsItsRightAscension()
    {
        var dec = Angle.FromRadians(Math.BitIncrement(Math.PI / 2.0));
        Assert.Equal(
            120.0,
            SkyDirection.FromRaDec(Angle.FromDegrees(120.0), dec).RightAscension.Degrees,
            1e-10
        );
        Assert.Equal(
            120.0,
            SkyDirection.FromRaDec(Angle.FromDegrees(120.0), -dec).RightAscension.Degrees,
            1e-10
        );
    }

    [Theory]
    [InlineData(90.0001)]
    [InlineData(-91.0)]
    [InlineData(double.NaN)]
    public void FromDegrees_BeyondThePole_Refused(double declination) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            SkyDirection.FromDegrees(10.0, declination)
        );

    [Fact]
    public void FromVector_NoDirection_Refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SkyDirection.FromVector(default));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            SkyDirection.FromVector(new(double.NaN, 0.0, 1.0))
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            SkyDirection.FromVector(new(1e200, 0.0, 1.0))
        );
    }

    [Fact]
    public void RightAscensionAndDeclination_OfNegativeZeros_ArePlainZeros()
    {
        var direction = SkyDirection.FromVector(new(1.0, -0.0, -0.0));
        Assert.False(double.IsNegative(direction.RightAscension.Radians));
        Assert.False(double.IsNegative(direction.Declination.Radians));
        Assert.Equal("0.000000, +0.000000", direction.ToString());
    }

    [Fact]
    public void ToString_JustBelowAFullTurn_DoesNotRead360() =>
        Assert.Equal(
            "0.000000, -45.500000",
            SkyDirection.FromDegrees(359.99999999, -45.5).ToString()
        );

    [Property(MaxTest = 1000, Arbitrary = [typeof(Arbitraries)])]
    public void EastAndNorth_Anywhere_MakeARightHandedFrame(SkyDirection direction)
    {
        var (v, east, north) = (direction.Vector, direction.East, direction.North);
        Assert.Equal(1.0, east.Length, 4e-16);
        Assert.Equal(1.0, north.Length, 4e-16);
        Assert.Equal(0.0, v.Dot(east), 4e-16);
        Assert.Equal(0.0, v.Dot(north), 4e-16);
        Assert.Equal(0.0, (east.Cross(north) - v).Length, 1e-15);
        Assert.Equal(0.0, east.Z);
        Assert.True(north.Z >= 0.0);
    }

    [Property(MaxTest = 2000, Arbitrary = [typeof(Arbitraries)])]
    public void Offset_SeparationAndPositionAngle_ReadBack(
        SkyDirection from,
        PositionAngle towards,
        int size
    )
    {
        // From 1e-6 arcsec to nearly half a turn.
        var distance = Angle.FromDegrees(
            Math.Pow(10.0, -9.5 + (11.7 * ((uint)size / (double)uint.MaxValue)))
        );
        var reached = from.Offset(towards, distance);
        Assert.Equal(distance.Radians, from.SeparationTo(reached).Radians, 5e-16);
        Assert.Equal(from.SeparationTo(reached), reached.SeparationTo(from));

        // A rounding step of the vectors, seen from their distance.
        var noise = 1e-15 / Math.Sin(distance.Radians);
        Assert.Equal(0.0, from.PositionAngleTo(reached).TurnTo(towards).Radians, noise);
        Assert.Equal(
            0.0,
            reached.Offset(reached.PositionAngleTo(from), distance).SeparationTo(from).Radians,
            3e-15
        );
    }

    [Property(MaxTest = 1000, Arbitrary = [typeof(Arbitraries)])]
    public void SeparationTo_ThreePlaces_KeepsTheTriangleRule(
        SkyDirection a,
        SkyDirection b,
        SkyDirection c
    )
    {
        var direct = a.SeparationTo(c).Radians;
        Assert.True(direct <= a.SeparationTo(b).Radians + b.SeparationTo(c).Radians + 1e-15);
        Assert.Equal(
            Math.PI,
            a.SeparationTo(b).Radians + a.SeparationTo(b.Antipode).Radians,
            1e-15
        );
    }

    [Property(MaxTest = 1000, Arbitrary = [typeof(Arbitraries)])]
    public void MidpointTo_TwoPlaces_LiesHalfWay(SkyDirection a, SkyDirection b)
    {
        var separation = a.SeparationTo(b).Radians;
        if (separation > Math.PI - 1e-6)
        {
            return;
        }

        var middle = a.MidpointTo(b);
        var noise = 1e-15 / Math.Cos(separation / 2.0);
        Assert.Equal(separation / 2.0, middle.SeparationTo(a).Radians, noise);
        Assert.Equal(separation / 2.0, middle.SeparationTo(b).Radians, noise);
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void MidpointTo_Antipode_Refused(SkyDirection direction) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => direction.MidpointTo(direction.Antipode));

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void PositionAngleTo_ItselfAndAntipode_IsNorth(SkyDirection direction)
    {
        Assert.Equal(PositionAngle.North, direction.PositionAngleTo(direction));
        Assert.Equal(PositionAngle.North, direction.PositionAngleTo(direction.Antipode));
    }

    [Theory]
    [InlineData(10.0, 20.0, 10.0, 60.0, 0.0)]
    [InlineData(10.0, 0.0, 12.0, 0.0, 90.0)]
    [InlineData(359.0, 0.0, 1.0, 0.0, 90.0)]
    [InlineData(1.0, 0.0, 359.0, 0.0, 270.0)]
    [InlineData(10.0, 89.0, 190.0, 89.0, 0.0)]
    [InlineData(10.0, -89.0, 190.0, -89.0, 180.0)]
    public void PositionAngleTo_KnownPlaces_NorthThroughEast(
        double ra1,
        double dec1,
        double ra2,
        double dec2,
        double expected
    ) =>
        Assert.Equal(
            0.0,
            SkyDirection
                .FromDegrees(ra1, dec1)
                .PositionAngleTo(SkyDirection.FromDegrees(ra2, dec2))
                .TurnTo(PositionAngle.FromDegrees(expected))
                .Degrees,
            1e-10
        );

    [Fact]
    public void Default_TellsThatItIsNone()
    {
        Assert.True(default(SkyDirection).IsDefault);
        Assert.False(SkyDirection.NorthPole.IsDefault);
        Assert.Equal(SkyDirection.SouthPole, SkyDirection.NorthPole.Antipode);
    }
}
