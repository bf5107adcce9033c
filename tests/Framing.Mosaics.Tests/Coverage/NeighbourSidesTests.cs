using Framing.Sky;

namespace Framing.Mosaics.Tests;

public sealed class NeighbourSidesTests
{
    private static readonly FieldShape Field = new(0.0767, 0.0522);

    [Fact]
    public void Of_AMosaic_AreTheSidesOfItsCoverage()
    {
        var mosaic = Laid(3, 2, 78.0, CameraTurning.LeftAlone);

        Assert.Equal(
            CoverageMeasure
                .Of(
                    mosaic,
                    new([new SkyPolygon(mosaic.WholeFrame.Corners(mosaic.Pose, mirrored: false))])
                )
                .SharedSides,
            NeighbourSides.Of(mosaic)
        );
    }

    [Fact]
    public void Thin_CameraTurnedAtEachPanel_IsEmpty() =>
        Assert.Empty(
            NeighbourSides.Thin(
                Laid(3, 2, 60.0, CameraTurning.TurnedAtEachPanel),
                Angle.FromArcminutes(2.0)
            )
        );

    [Theory]
    [InlineData(2, 1, 60.0)]
    [InlineData(2, 1, 86.5)]
    [InlineData(1, 2, 60.0)]
    [InlineData(2, 1, -75.0)]
    public void Thin_CameraLeftAlone_IsWhatOneCoversAndBothShould(
        int columns,
        int rows,
        double declination
    )
    {
        // Places strewn over the strip of the first panel that its neighbour should cover, where the two sides face each other.
        var mosaic = Laid(columns, rows, declination, CameraTurning.LeftAlone);
        var thin = NeighbourSides
            .Thin(mosaic, Angle.Zero)
            .Select(ring => new SkyPolygon(ring))
            .ToList();
        var (first, second) = (mosaic.Panels[0], mosaic.Panels[1]);
        var overlap = columns == 2 ? mosaic.Overlap.AlongWidth : mosaic.Overlap.AlongHeight;
        var (halfDepth, halfSide) =
            columns == 2
                ? (Field.TangentWidth / 2.0, Field.TangentHeight / 2.0)
                : (Field.TangentHeight / 2.0, Field.TangentWidth / 2.0);
        var (low, high) = Facing(first.Pose, second, columns == 2, halfSide);
        var random = new Random(12);
        var plane = new TangentPlane(first.Pose.Centre);
        var (sin, cos) = Math.SinCos(first.Pose.PositionAngle.Radians);
        int lacking = 0,
            wrong = 0;
        for (var i = 0; i < 20_000; i++)
        {
            var depth = halfDepth - (overlap * random.NextDouble());
            var side = low + ((high - low) * random.NextDouble());
            var (right, up) = columns == 2 ? (depth, side) : (side, -depth);
            var place = plane.Unproject(
                new((up * sin) - (right * cos), (up * cos) + (right * sin))
            );
            var isLacking = !Sees(second.Pose, place);
            lacking += isLacking ? 1 : 0;
            wrong += isLacking != thin.Exists(ring => ring.Contains(place)) ? 1 : 0;
        }

        // Beyond the ends of its side the neighbour ends along other sides of it: 2 places in 1,000 lie there.
        Assert.InRange(wrong, 0, 60);
        Assert.InRange(lacking, rows == 2 ? 0 : 1_000, rows == 2 ? 600 : 12_000);
    }

    /// <summary>The length along the first panel's side on which its neighbour's side lies before it.</summary>
    private static (double Low, double High) Facing(
        CameraPose pose,
        Panel second,
        bool sideBySide,
        double halfSide
    )
    {
        var places = (sideBySide ? new[] { 0, 3 } : [0, 1])
            .Select(corner => OutlineMeasure.Offset(second.Corners[corner], pose))
            .Select(offset => sideBySide ? offset.V : offset.U)
            .ToList();
        return (Math.Max(-halfSide, places.Min()), Math.Min(halfSide, places.Max()));
    }

    private static bool Sees(CameraPose pose, SkyDirection at)
    {
        var (u, v) = OutlineMeasure.Offset(at, pose);
        return Math.Abs(u) <= Field.TangentWidth / 2.0 && Math.Abs(v) <= Field.TangentHeight / 2.0;
    }

    private static Mosaic Laid(int columns, int rows, double declination, CameraTurning turning) =>
        Mosaic.Grid(
            new(SkyDirection.FromDegrees(30.0, declination), PositionAngle.North),
            Field,
            new(0.0115, 0.0078),
            columns,
            rows,
            mirrored: false,
            turning
        );
}
