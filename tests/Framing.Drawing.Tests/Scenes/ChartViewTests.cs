using Framing.Sky;

namespace Framing.Drawing.Tests;

public sealed class ChartViewTests
{
    [Theory]
    [InlineData(0.0, 0.0, 0.0)]
    [InlineData(0.2, 60.0, 33.0)]
    [InlineData(10.0, 89.9, 120.0)]
    public void Around_Corners_HoldsThemWithTheSameRimOnOppositeSides(
        double ra,
        double dec,
        double up
    )
    {
        var field = new FieldShape(0.2, 0.1);
        var pose = new CameraPose(InventedSky.At(ra, dec), PositionAngle.FromDegrees(up));
        var view = ChartView.Around([.. field.Corners(pose, mirrored: false)], pose.PositionAngle);
        Assert.Equal(0.0, view.Centre.SeparationTo(pose.Centre).Arcseconds, 0.5);

        // A rim of a tenth of the larger side on every side.
        Assert.Equal(0.24, 2.0 * Math.Tan(view.Width.Radians / 2.0), 1e-6);
        Assert.Equal(0.14, 2.0 * Math.Tan(view.Height.Radians / 2.0), 1e-6);
    }

    [Fact]
    public void Around_OneDirection_HalfADegree()
    {
        var view = ChartView.Around([InventedSky.At(10.0, 20.0)]);
        Assert.Equal(0.5, view.Width.Degrees, 1e-9);
        Assert.Equal(0.5, view.Height.Degrees, 1e-9);
    }

    [Fact]
    public void Around_Nothing_IsRefused() =>
        Assert.Throws<ArgumentException>(() => ChartView.Around([]));

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.001)]
    [InlineData(101.0)]
    [InlineData(-5.0)]
    public void Constructor_FieldOutOfRange_IsRefused(double degrees) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new ChartView(
                InventedSky.At(0.0, 0.0),
                Angle.FromDegrees(degrees),
                Angle.FromDegrees(1.0)
            )
        );

    [Fact]
    public void Constructor_NoDirection_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new ChartView(default, Angle.FromDegrees(1.0), Angle.FromDegrees(1.0))
        );
}
