using FsCheck.Xunit;

namespace Framing.Sky.Tests;

public sealed class PixelMatrixTests
{
    private static readonly Angle Scale = Angle.FromArcseconds(3.82);

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void FromPositionAngle_EitherParity_ReadsBack(PositionAngle up, bool mirrored)
    {
        var matrix = PixelMatrix.FromPositionAngle(up, Scale, mirrored);
        Assert.True(matrix.IsUsable);
        Assert.Equal(mirrored, matrix.IsMirrored);
        Assert.Equal(0.0, matrix.PositionAngleOfY.TurnTo(up).Degrees, 1e-12);
        Assert.Equal(0.0, matrix.MeanPositionAngle.TurnTo(up).Degrees, 1e-12);

        // Right of up is 90 degrees further west as the eye sees the sky, further east in a mirror.
        var right = up.TurnedBy(Angle.FromDegrees(mirrored ? 90.0 : -90.0));
        Assert.Equal(0.0, matrix.PositionAngleOfX.TurnTo(right).Degrees, 1e-12);
        Assert.Equal(Scale.Arcseconds, matrix.Scale.Arcseconds, 1e-12);
        Assert.Equal(Scale.Arcseconds, matrix.ScaleX.Arcseconds, 1e-12);
        Assert.Equal(Scale.Arcseconds, matrix.ScaleY.Arcseconds, 1e-12);
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void FromRotation_PositionAngle_IsMinusTheRotation(PositionAngle up, bool mirrored)
    {
        var s = Scale.Degrees;
        var older = PixelMatrix.FromRotation(mirrored ? s : -s, s, Angle.FromRadians(-up.Radians));
        Close(PixelMatrix.FromPositionAngle(up, Scale, mirrored), older);
    }

    [Fact]
    public void FromPc_UnitMatrix_IsTheScales()
    {
        var matrix = PixelMatrix.FromPc(-0.001, 0.002, new(1.0, 0.0, 0.0, 1.0));
        Close(new(-0.001, 0.0, 0.0, 0.002), matrix);
        Assert.Equal(3.6, matrix.ScaleX.Arcseconds, 1e-12);
        Assert.Equal(7.2, matrix.ScaleY.Arcseconds, 1e-12);
        Assert.Equal(3.6 * Math.Sqrt(2.0), matrix.Scale.Arcseconds, 1e-12);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void MeanPositionAngle_SkewedAxes_IsHalfWayBetweenThem(bool mirrored)
    {
        // +y at 31 degrees, +x where an up of 29 degrees would have it: the mean is 30.
        var y = PixelMatrix.FromPositionAngle(PositionAngle.FromDegrees(31.0), Scale, mirrored);
        var x = PixelMatrix.FromPositionAngle(PositionAngle.FromDegrees(29.0), Scale, mirrored);
        var skewed = new PixelMatrix(x.Cd11, y.Cd12, x.Cd21, y.Cd22);
        Assert.Equal(30.0, skewed.MeanPositionAngle.Degrees, 1e-12);
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void WithLonPole_Standard_IsTheSameAndZeroIsHalfATurn(PositionAngle up, bool mirrored)
    {
        var matrix = PixelMatrix.FromPositionAngle(up, Scale, mirrored);
        Close(matrix, matrix.WithLonPole(Angle.FromDegrees(180.0)));
        Close(
            PixelMatrix.FromPositionAngle(up.Opposite, Scale, mirrored),
            matrix.WithLonPole(Angle.Zero)
        );
    }

    [Fact]
    public void IsUsable_SingularOrNotFinite_IsFalse()
    {
        Assert.False(default(PixelMatrix).IsUsable);
        Assert.False(new PixelMatrix(1.0, 2.0, 2.0, 4.0).IsUsable);
        Assert.False(new PixelMatrix(double.NaN, 0.0, 0.0, 1.0).IsUsable);
        Assert.False(new PixelMatrix(1.0, 0.0, 0.0, double.PositiveInfinity).IsUsable);
        Assert.True(new PixelMatrix(-1e-9, 0.0, 0.0, 1e-5).IsUsable);
    }

    [Property(Arbitrary = [typeof(Arbitraries)])]
    public void WithRowsReversed_Twice_IsTheSame(PositionAngle up, bool mirrored)
    {
        var matrix = PixelMatrix.FromPositionAngle(up, Scale, mirrored);
        Assert.Equal(!mirrored, matrix.WithRowsReversed().IsMirrored);
        Assert.Equal(matrix, matrix.WithRowsReversed().WithRowsReversed());
        Assert.Equal(
            180.0,
            matrix.WithRowsReversed().PositionAngleOfY.TurnTo(up).Magnitude.Degrees,
            1e-12
        );
    }

    private static void Close(PixelMatrix expected, PixelMatrix actual)
    {
        Assert.Equal(expected.Cd11, actual.Cd11, 1e-17);
        Assert.Equal(expected.Cd12, actual.Cd12, 1e-17);
        Assert.Equal(expected.Cd21, actual.Cd21, 1e-17);
        Assert.Equal(expected.Cd22, actual.Cd22, 1e-17);
    }
}
