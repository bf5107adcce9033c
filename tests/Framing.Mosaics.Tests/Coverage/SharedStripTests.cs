using Framing.Sky;

namespace Framing.Mosaics.Tests;

public sealed class SharedStripTests
{
    private static readonly FieldShape Field = new(0.0767, 0.0522);

    [Theory]
    [InlineData(0.0, 0.0, 2, 1, false)]
    [InlineData(359.9, 62.0, 2, 1, true)]
    [InlineData(120.0, -89.0, 1, 2, false)]
    [InlineData(10.0, 88.5, 2, 1, false)]
    public void Of_Pair_IsTheSkyThatBothCover(
        double ra,
        double dec,
        int columns,
        int rows,
        bool mirrored
    )
    {
        // Coverage sums over arcs; here one panel is cut by the other.
        var pose = new CameraPose(
            SkyDirection.FromDegrees(ra, dec),
            PositionAngle.FromDegrees(33.0)
        );
        var mosaic = Mosaic.Grid(
            pose,
            Field,
            new(0.012, 0.009),
            columns,
            rows,
            mirrored,
            CameraTurning.LeftAlone
        );

        var strip = Assert.Single(SharedStrip.Of(mosaic));

        var both = CoverageMeasure
            .Of(
                mosaic,
                SkyOutline.Rectangle(
                    pose.Centre,
                    Angle.FromDegrees(1.0),
                    Angle.FromDegrees(1.0),
                    PositionAngle.North
                )
            )
            .AreaByDepth[1];
        Assert.Equal((1, 2), (strip.First, strip.Second));
        Assert.Equal(
            both.Steradians,
            new SkyPolygon(strip.Corners).Area.Steradians,
            1e-9 * both.Steradians
        );
    }

    [Fact]
    public void Of_PanelsApart_HasNoCorners()
    {
        var mosaic = Mosaic.Grid(
            new(SkyDirection.FromDegrees(40.0, 10.0), PositionAngle.North),
            Field,
            default,
            2,
            1,
            mirrored: false,
            CameraTurning.TurnedAtEachPanel
        );
        var apart = mosaic.AsShot([
            mosaic.Panels[0].Pose,
            new(SkyDirection.FromDegrees(70.0, 10.0), PositionAngle.North),
        ]);

        Assert.Empty(Assert.Single(SharedStrip.Of(apart)).Corners);
    }

    [Fact]
    public void Of_ThreeByTwo_HasOneStripAPair() =>
        Assert.Equal(
            [(1, 2), (2, 3), (4, 5), (5, 6), (1, 4), (2, 5), (3, 6)],
            SharedStrip
                .Of(
                    Mosaic.Grid(
                        new(SkyDirection.FromDegrees(40.0, 10.0), PositionAngle.North),
                        Field,
                        new(0.01, 0.01),
                        3,
                        2,
                        mirrored: false,
                        CameraTurning.TurnedAtEachPanel
                    )
                )
                .Select(strip => (strip.First, strip.Second))
        );
}
