using Framing.Sky;

namespace Framing.Mosaics.Tests;

/// <summary>Panels upon each other, edge to edge, nested, far apart, opposite, and all round the sky.</summary>
public sealed class CoverageOfOddPanelsTests
{
    private static readonly FieldShape Field = new(0.08, 0.05);

    /// <summary>A face of a cube about the sphere: six of them tile the sky edge to edge.</summary>
    private static readonly FieldShape Face = new(2.0, 2.0);

    private static readonly SkyDirection[] Faces =
    [
        SkyDirection.FromDegrees(0.0, 0.0),
        SkyDirection.FromDegrees(90.0, 0.0),
        SkyDirection.FromDegrees(180.0, 0.0),
        SkyDirection.FromDegrees(270.0, 0.0),
        SkyDirection.NorthPole,
        SkyDirection.SouthPole,
    ];

    [Theory]
    [InlineData(1, 33.0, 12.0)]
    [InlineData(2, 0.0, 90.0)]
    [InlineData(7, 359.99, -89.0)]
    [InlineData(40, 200.0, 0.0)]
    public void Of_IdenticalPanels_AreOneAndAsDeep(int count, double ra, double dec)
    {
        var pose = Pose(ra, dec, 17.0);
        PanelPair[] pairs =
        [
            .. Enumerable.Range(0, count - 1).Select(i => new PanelPair(i, i + 1, true)),
        ];

        var coverage = Measure(Field, [.. Enumerable.Repeat(pose, count)], pairs);

        Same(Field.Area, coverage.Area);
        Assert.Equal(count, coverage.AreaByDepth.Count);
        Same(Field.Area, coverage.AreaByDepth[^1]);
        Assert.All(coverage.AreaByDepth.SkipLast(1), area => Zero(area));
        Zero(coverage.GapArea);
        Assert.Empty(coverage.Gaps);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(123.4)]
    [InlineData(359.999)]
    public void Of_PanelsEdgeToEdge_TouchWithoutAGap(double ra)
    {
        // On the equator the left and right edges lie on meridians: a width apart two panels share one.
        var poses = Enumerable
            .Range(0, 3)
            .Select(i => Pose(ra - (i * Field.Width.Degrees), 0.0, 0.0))
            .ToArray();

        var coverage = Measure(Field, poses, [new(0, 1, true), new(1, 2, true)]);

        Assert.Equal(3.0 * Field.Area.Steradians, coverage.Area.Steradians, 1e-14);
        Assert.Equal(3.0 * Field.Area.Steradians, coverage.AreaByDepth[0].Steradians, 1e-14);
        Assert.Empty(coverage.Gaps);
        Assert.Equal(0.0, coverage.LeastOverlap!.Value.Radians, 1e-13);
    }

    [Fact]
    public void Of_SixFacesOfACube_AreTheWholeSky()
    {
        var coverage = Measure(Face, [.. Faces.Select(face => new CameraPose(face, default))], []);

        Assert.Equal(4.0 * Math.PI, coverage.Area.Steradians, 1e-12);
        Assert.Equal(4.0 * Math.PI, coverage.AreaByDepth[0].Steradians, 1e-12);
        Assert.Empty(coverage.Gaps);
        Assert.Equal(1.0, coverage.TargetCoveredFraction, 1e-12);
    }

    [Fact]
    public void Of_FiveFacesOfACube_ShutTheSixthInUnlessItIsOutside()
    {
        CameraPose[] five = [.. Faces.SkipLast(1).Select(face => new CameraPose(face, default))];
        var third = 4.0 * Math.PI / 6.0;

        // Seen from the pole the open face lies opposite, which is outside.
        var outside = Measure(Face, five, [], SkyDirection.NorthPole);
        Assert.Equal(5.0 * third, outside.Area.Steradians, 1e-12);
        Assert.Empty(outside.Gaps);

        var enclosed = Measure(Face, five, [], Faces[0]);
        Assert.Equal(5.0 * third, enclosed.Area.Steradians, 1e-12);
        Assert.Equal(third, enclosed.EnclosedHoleArea.Steradians, 1e-12);
        var hole = Assert.Single(enclosed.Gaps);
        Assert.Equal(4, hole.Outer.Count);
        Assert.Equal(third, new SkyPolygon(hole.Outer).SignedArea.Steradians, 1e-12);
    }

    [Fact]
    public void Of_APanelInsideAnother_OnlyDeepens()
    {
        var pose = Pose(10.0, 89.9, 30.0);
        var small = new FieldShape(0.02, 0.01);
        Panel[] panels =
        [
            new(1, 1, 1, pose, Field.Corners(pose, mirrored: false)),
            new(2, 2, 1, pose, small.Corners(pose, mirrored: true)),
        ];

        var coverage = CoverageMeasure.Of(panels, [], Field, false, pose.Centre, Aim(pose.Centre));

        Same(Field.Area, coverage.Area);
        Same(small.Area, coverage.AreaByDepth[1]);
        Assert.Empty(coverage.Gaps);
    }

    [Theory]
    [InlineData(20.0)]
    [InlineData(90.0)]
    [InlineData(180.0)]
    public void Of_PanelsFarApart_AddUpAndFaceNothing(double apart)
    {
        var coverage = Measure(
            Field,
            [Pose(0.0, 10.0, 0.0), Pose(apart, apart == 180.0 ? -10.0 : 10.0, 0.0)],
            [new(0, 1, true)]
        );

        Assert.Equal(2.0 * Field.Area.Steradians, coverage.Area.Steradians, 1e-14);
        Assert.Equal(0.0, coverage.EnclosedHoleArea.Steradians);
        if (apart > 80.0)
        {
            Assert.Equal(-Field.Width.Radians, coverage.LeastOverlap!.Value.Radians, 1e-12);
            Assert.Empty(coverage.Gaps);
        }
    }

    [Fact]
    public void Of_ATargetFlushWithAPanel_IsCovered()
    {
        foreach (var dec in new[] { 0.0, 45.0, 90.0, -89.5 })
        {
            var pose = Pose(0.0, dec, 21.0);
            var flush = new SkyOutline([new SkyPolygon(Field.Corners(pose, mirrored: false))]);
            Panel[] panels = [new(1, 1, 1, pose, Field.Corners(pose, mirrored: false))];

            var coverage = CoverageMeasure.Of(panels, [], Field, false, pose.Centre, flush);

            Assert.Equal(1.0, coverage.TargetCoveredFraction);
            Assert.Empty(coverage.Uncovered);
        }
    }

    [Fact]
    public void Of_APanelWithinATarget_LeavesARing()
    {
        var pose = Pose(77.0, -30.0, 5.0);
        var target = Aim(pose.Centre);

        var coverage = Measure(Field, [pose], []);

        var left = Assert.Single(coverage.Uncovered);
        Assert.Single(left.Holes);
        Assert.Equal(
            target.Areas[0].Area.Steradians - Field.Area.Steradians,
            left.Area.Steradians,
            1e-13
        );
    }

    [Fact]
    public void Of_AMosaicWiderThanOnePlane_IsMeasured()
    {
        // Twelve columns of 53°: the outermost stand more than 80° from the middle.
        var mosaic = Mosaic.Grid(
            new(SkyDirection.FromDegrees(0.0, 0.0), PositionAngle.North),
            new(1.0, 1.0),
            default,
            12,
            1,
            mirrored: false,
            CameraTurning.TurnedAtEachPanel
        );

        var coverage = CoverageMeasure.Of(mosaic, Aim(mosaic.Pose.Centre));

        Assert.Equal(1.0, coverage.TargetCoveredFraction);
        Assert.Equal(11, coverage.SharedSides.Count);

        // The two in the middle just touch; farther out the steps of the plane are shorter on the sky.
        Assert.Equal(0.0, coverage.LeastOverlap!.Value.Radians, 1e-12);
        Assert.Equal(11, coverage.SharedSides.Count(side => side.LeastDepth.Radians > -1e-12));
        Assert.Equal(10, coverage.SharedSides.Count(side => side.LeastDepth.Degrees > 5.0));
        Assert.Equal(
            12.0 * mosaic.Field.Area.Steradians,
            coverage.AreaByDepth.Select((area, depth) => area.Steradians * (depth + 1)).Sum(),
            1e-12
        );
    }

    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    public void AsShot_WrongNumberOfPoses_IsRefused(int poses)
    {
        var pose = Pose(1.0, 2.0, 3.0);
        var mosaic = Mosaic.Grid(
            pose,
            Field,
            default,
            3,
            1,
            mirrored: false,
            CameraTurning.LeftAlone
        );
        Assert.Throws<ArgumentException>(() => mosaic.AsShot([.. Enumerable.Repeat(pose, poses)]));
    }

    private static MosaicCoverage Measure(
        FieldShape field,
        CameraPose[] poses,
        PanelPair[] pairs,
        SkyDirection? middle = null
    ) =>
        CoverageMeasure.Of(
            [
                .. poses.Select(
                    (pose, i) =>
                        new Panel(i + 1, i + 1, 1, pose, field.Corners(pose, mirrored: false))
                ),
            ],
            pairs,
            field,
            mirrored: false,
            middle ?? poses[0].Centre,
            Aim(middle ?? poses[0].Centre)
        );

    private static SkyOutline Aim(SkyDirection middle) =>
        SkyOutline.Ellipse(
            middle,
            Angle.FromDegrees(9.0),
            Angle.FromDegrees(7.0),
            PositionAngle.FromDegrees(40.0)
        );

    private static CameraPose Pose(double ra, double dec, double angle) =>
        new(
            SkyDirection.FromDegrees(((ra % 360.0) + 360.0) % 360.0, dec),
            PositionAngle.FromDegrees(angle)
        );

    private static void Same(SolidAngle expected, SolidAngle actual) =>
        Assert.Equal(expected.Steradians, actual.Steradians, 1e-10 * expected.Steradians);

    private static void Zero(SolidAngle area) => Assert.Equal(0.0, area.Steradians, 1e-13);
}
