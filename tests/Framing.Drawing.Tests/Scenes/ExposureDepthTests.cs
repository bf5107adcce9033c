using Framing.Sky;

namespace Framing.Drawing.Tests;

public sealed class ExposureDepthTests
{
    private static readonly SkyDirection Middle = SkyDirection.FromDegrees(40.0, 61.0);

    [Fact]
    public void At_OverlappingFrames_AddsUp()
    {
        var depth = Depth();
        Assert.Equal(300.0, depth.At(Middle));
        Assert.Equal(100.0, depth.At(Middle.Offset(PositionAngle.North, Angle.FromDegrees(1.4))));
        Assert.Equal(0.0, depth.At(Middle.Offset(PositionAngle.North, Angle.FromDegrees(3.0))));
        Assert.Equal(300.0, depth.DeepestSeconds);
    }

    [Fact]
    public void Fill_OfAChart_IsBrightWhereItIsDeepAndClearWhereItIsNot()
    {
        var chart = new TanWorldCoordinates(
            new(50.5, 50.5),
            Middle,
            PixelMatrix.FromPositionAngle(
                PositionAngle.North,
                Angle.FromDegrees(0.1),
                mirrored: false
            )
        );
        var pixels = new byte[4 * 100 * 100];
        Depth().Fill(chart, 100, 100, pixels);
        (int Red, int Opacity) At(int x, int y) =>
            (pixels[4 * ((y * 100) + x)], pixels[(4 * ((y * 100) + x)) + 3]);
        Assert.Equal((254, 255), At(50, 50));
        Assert.Equal((0, 0), At(2, 2));

        // North is up: the shallow frame reaches 1.5° there, 15 pixels.
        Assert.InRange(At(50, 37).Red, 60, 110);
    }

    private static ExposureDepth Depth() => new([(Square(3.0), 100.0), (Square(1.0), 200.0)]);

    private static IReadOnlyList<SkyDirection> Square(double degrees)
    {
        var side = 2.0 * Math.Tan(double.DegreesToRadians(degrees / 2.0));
        return new FieldShape(side, side).Corners(
            new(Middle, PositionAngle.North),
            mirrored: false
        );
    }
}
