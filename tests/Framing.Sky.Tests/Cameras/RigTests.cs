using FsCheck.Xunit;

namespace Framing.Sky.Tests;

public sealed class RigTests
{
    private static readonly Sensor Sensor = new(4144, 2822, 4.63);

    [Theory]
    [InlineData(0.0)]
    [InlineData(-250.0)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(100_001.0)]
    public void New_FocalLengthOutOfRange_Refused(double focalLength) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Rig(focalLength, Sensor));

    [Theory]
    [InlineData(0)]
    [InlineData(17)]
    public void New_BinningOutOfRange_Refused(int binning) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Rig(250.0, Sensor, binning));

    [Fact]
    public void New_BinningOfMoreThanTheSensorHas_Refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new Rig(250.0, new Sensor(100, 3, 5.0), 4)
        );

    [Theory]
    [InlineData(0, 2822, 4.63)]
    [InlineData(4144, -1, 4.63)]
    [InlineData(100_001, 2822, 4.63)]
    [InlineData(4144, 2822, 0.0)]
    [InlineData(4144, 2822, double.NaN)]
    [InlineData(4144, 2822, 1001.0)]
    public void NewSensor_OutOfRange_Refused(int width, int height, double pixel) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Sensor(width, height, pixel));

    [Fact]
    public void Sensor_Size_IsPixelsTimesPitch()
    {
        Assert.Equal(19.186_72, Sensor.WidthMillimetres, 1e-12);
        Assert.Equal(13.065_86, Sensor.HeightMillimetres, 1e-12);
    }

    [Theory]
    [InlineData(1, 4144, 2822)]
    [InlineData(2, 2072, 1411)]
    [InlineData(3, 1381, 940)]
    public void Frame_Binned_HoldsWholePixelsOnly(int binning, int columns, int rows)
    {
        var rig = new Rig(250.0, Sensor, binning);
        Assert.Equal(columns, rig.FrameWidthPx);
        Assert.Equal(rows, rig.FrameHeightPx);
        Assert.Equal(binning * 4.63 / 250_000.0, rig.Scale.Radians, 1e-18);
        Assert.Equal(columns * binning * 4.63 / 250_000.0, rig.Field.TangentWidth, 1e-15);
        Assert.Equal(rows * binning * 4.63 / 250_000.0, rig.Field.TangentHeight, 1e-15);
    }

    [Property(MaxTest = 300, Arbitrary = [typeof(Arbitraries)])]
    public void WorldCoordinates_AnyPose_AgreesWithTheField(
        SkyDirection centre,
        PositionAngle up,
        bool mirrored,
        bool binned
    )
    {
        var rig = new Rig(250.0, Sensor, binned ? 3 : 1, mirrored);
        var pose = new CameraPose(centre, up);
        var world = rig.WorldCoordinates(pose);
        Assert.Equal(mirrored, world.Matrix.IsMirrored);
        Assert.Equal(0.0, world.Matrix.PositionAngleOfY.TurnTo(up).Degrees, 1e-12);
        var corners = rig.Field.Corners(pose, mirrored);
        var fromPixels = PanelCornersTests.CornersOf(rig, pose);
        for (var i = 0; i < 4; i++)
        {
            Assert.Equal(0.0, corners[i].SeparationTo(fromPixels[i]).Arcseconds, 1e-9);
        }
    }

    [Fact]
    public void FocalLength_FromItsOwnScaleAndWidth_ReadsBack()
    {
        var rig = new Rig(252.6, Sensor, 2);
        Assert.Equal(252.6, Rig.FocalLengthFromScale(rig.Scale, 9.26), 1e-10);
        Assert.Equal(
            252.6,
            Rig.FocalLengthFromWidth(rig.Field.Width, rig.Sensor.WidthMillimetres),
            1e-10
        );
    }

    [Fact]
    public void Measures_OutOfRange_Refused()
    {
        var rig = new Rig(250.0, Sensor);
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            Rig.FocalLengthFromScale(Angle.Zero, 4.63)
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            Rig.FocalLengthFromWidth(Angle.Zero, 19.0)
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            Rig.FocalLengthFromWidth(Angle.FromDegrees(180.0), 19.0)
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => rig.ScaleAt(Angle.FromDegrees(90.0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => rig.ScaleAt(Angle.FromDegrees(-1.0)));
    }

    [Fact]
    public void ScaleAt_OffAxis_IsWhatNeighbouringPixelsShow()
    {
        var rig = new Rig(50.0, Sensor);
        var world = rig.WorldCoordinates(
            new(SkyDirection.FromDegrees(30.0, 60.0), PositionAngle.FromDegrees(17.0))
        );
        var (x, y) = (world.ReferencePixel.X + 1800.0, world.ReferencePixel.Y);
        var here = world.PixelToSky(new(x, y));
        var (radial, tangential) = rig.ScaleAt(here.SeparationTo(world.ReferenceDirection));
        var outwards = world
            .PixelToSky(new(x + 0.5, y))
            .SeparationTo(world.PixelToSky(new(x - 0.5, y)));
        var around = world
            .PixelToSky(new(x, y + 0.5))
            .SeparationTo(world.PixelToSky(new(x, y - 0.5)));
        Assert.Equal(1.0, outwards / radial, 1e-8);
        Assert.Equal(1.0, around / tangential, 1e-8);
    }
}
