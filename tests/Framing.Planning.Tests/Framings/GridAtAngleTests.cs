using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Planning.Tests;

public sealed class GridAtAngleTests
{
    private static readonly PanelOverlap Overlap = new(0.0115, 0.0078);

    [Theory]
    [InlineData(0, 0)]
    [InlineData(3, 2)]
    public void Of_AFixedCentre_StandsThere(int columns, int rows)
    {
        var middle = SkyDirection.FromDegrees(41.0, 60.5);
        var request = Requests.Of(
            Requests.Box(40.0, 60.0, 6.0, 4.0, 0.0),
            grid: columns == 0 ? GridWish.Fewest : GridWish.Fixed(columns, rows)
        ) with
        {
            FixedCentre = middle,
        };
        var angle = PositionAngle.FromDegrees(20.0);

        var fit = GridAtAngle.Of(request, Overlap, angle);

        Assert.Equal(new CameraPose(middle, angle), fit.Frame.Pose);
        if (columns > 0)
        {
            Assert.Equal((columns, rows), (fit.Columns, fit.Rows));
        }

        // The margin is that of the corner that stands out farthest, seen from there.
        var plane = new TangentPlane(middle);
        var (sin, cos) = Math.SinCos(angle.Radians);
        var least = request.Target.Outline.Corners.Min(corner =>
        {
            var p = plane.Project(corner);
            return Math.Min(
                (fit.Frame.Field.TangentWidth / 2.0) - Math.Abs((p.Eta * sin) - (p.Xi * cos)),
                (fit.Frame.Field.TangentHeight / 2.0) - Math.Abs((p.Xi * sin) + (p.Eta * cos))
            );
        });
        Assert.Equal(least, fit.TangentMargin, 1e-12);
    }

    [Theory]
    [InlineData(50.0, 0.0)]
    [InlineData(50.0, 35.0)]
    [InlineData(-66.0, 80.0)]
    [InlineData(74.0, 120.0)]
    public void Of_BandsOfACameraLeftAlone_HoldsWhatTheRectangleHolds(
        double declination,
        double degrees
    )
    {
        var request = Requests.Of(Hook(declination), grid: GridWish.Adapted) with
        {
            Margin = Angle.FromArcminutes(4.0),
            MostPanels = 200,
        };
        var angle = PositionAngle.FromDegrees(degrees);

        var bands = GridAtAngle.Of(request, Overlap, angle);
        var full = GridAtAngle.Of(request with { Grid = GridWish.Fewest }, Overlap, angle);

        Assert.True(bands.Panels <= full.Panels);
        Assert.True(Held(bands) >= Math.Min(Held(full), 1.0) - 2e-9);
        Assert.True(bands.HoldsMargin);

        double Held(GridFit fit) =>
            CoverageMeasure
                .Of(LaidMosaic.Of(request, Overlap, fit), request.Target.Outline)
                .TargetCoveredFraction;
    }

    [Fact]
    public void Of_BandsOfACameraThatTurns_AreNotWidened()
    {
        var request = Requests.Of(Hook(74.0), grid: GridWish.Adapted) with
        {
            TurnCameraAtEachPanel = true,
            MostPanels = 200,
        };
        var angle = PositionAngle.FromDegrees(35.0);

        var bands = GridAtAngle.Of(request, Overlap, angle);

        Assert.Equal(
            MosaicFit
                .AtAngle(
                    request.Target.Outline,
                    request.Rig.Field,
                    Overlap,
                    GridWish.Adapted,
                    request.WantedTangentMargin,
                    200,
                    angle
                )
                .Places!.Places,
            bands.Places!.Places
        );
    }

    /// <summary>A long arm and a short one at right angles, in the plane of their middle.</summary>
    private static SkyOutline Hook(double declination)
    {
        var plane = new TangentPlane(SkyDirection.FromDegrees(130.0, declination));
        (double, double)[] corners =
        [
            (-0.14, -0.02),
            (0.14, -0.02),
            (0.14, 0.16),
            (0.11, 0.16),
            (0.11, 0.01),
            (-0.14, 0.01),
        ];
        return new([
            new SkyPolygon([
                .. corners.Select(corner => plane.Unproject(new(corner.Item1, corner.Item2))),
            ]),
        ]);
    }
}
