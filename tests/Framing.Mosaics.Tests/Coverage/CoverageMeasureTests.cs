using Framing.Sky;

namespace Framing.Mosaics.Tests;

public sealed class CoverageMeasureTests
{
    private static readonly FieldShape Field = new(
        2.0 * Math.Tan(Angle.FromDegrees(2.25).Radians),
        2.0 * Math.Tan(Angle.FromDegrees(1.5).Radians)
    );

    [Fact]
    public void Of_CheckValues_AreMet()
    {
        var entries = CheckValues
            .Starting("mosaic-a-")
            .Concat(CheckValues.Starting("mosaic-b-"))
            .ToList();
        Assert.Equal(8, entries.Count);
        foreach (var entry in entries)
        {
            var turning = CheckValues.Id(entry).StartsWith("mosaic-a", StringComparison.Ordinal)
                ? CameraTurning.LeftAlone
                : CameraTurning.TurnedAtEachPanel;
            var (outline, core) = Measure(entry.Input("dec0"), 0.15, turning);
            entry.Meets(
                "min_overlap_side_pct",
                outline.LeastOverlapInRows!.Value.Degrees / 4.5 * 100.0
            );
            entry.Meets(
                "min_overlap_row_pct",
                outline.LeastOverlapInColumns!.Value.Degrees / 3.0 * 100.0
            );
            entry.Meets("uncovered_outline_arcmin2", Missing(outline));
            entry.Meets("uncovered_core_arcmin2", Missing(core));
        }
    }

    [Fact]
    public void Of_TableOfWorkedMosaics_IsReproduced()
    {
        // The tolerances of the table are a twentieth of a per cent and a square minute of arc; it is printed finer.
        var rows = CheckValues.Table("mosaic");
        Assert.Equal(18, rows.Count);
        foreach (var row in rows)
        {
            var dec = CheckValues.Number(row[0]);
            var (outline, core) = row[1] switch
            {
                "a" => Measure(dec, 0.15, CameraTurning.LeftAlone),
                "b" => Measure(dec, 0.15, CameraTurning.TurnedAtEachPanel),
                _ => Measure(AlongParallels(dec, 0.15)),
            };
            Near(row[2], outline.LeastOverlapInRows!.Value.Degrees / 4.5 * 100.0, 0.0051);
            Near(row[3], outline.LeastOverlapInRows!.Value.Arcminutes, 0.051);
            Near(row[4], outline.LeastOverlapInColumns!.Value.Degrees / 3.0 * 100.0, 0.0051);
            Near(row[5], outline.LeastOverlapInColumns!.Value.Arcminutes, 0.051);
            Near(row[6], Missing(outline), 0.51);
            Near(row[7], (1.0 - outline.TargetCoveredFraction) * 100.0, 0.0051);
            Near(row[8], Missing(core), 0.051);
            Near(row[9], outline.EnclosedHoleArea.SquareArcminutes, 0.051);

            // Where no pair opens, all of the gap is the enclosed hole.
            if (outline.LeastOverlap!.Value.Radians >= 0.0)
            {
                Near(row[9], outline.GapArea.SquareArcminutes, 0.051);
            }
        }
    }

    [Fact]
    public void Of_OverlapsThatJustClose_AsTabled()
    {
        // A tenth of a per cent above the tabled overlap everything is closed, two tenths below it is not.
        var rows = CheckValues.Table("mosaic_need");
        Assert.Equal(7, rows.Count);
        foreach (var row in rows)
        {
            double dec = CheckValues.Number(row[0]),
                need = CheckValues.Number(row[1]) / 100.0;
            var (closed, closedCore) = Measure(dec, need + 0.001, CameraTurning.LeftAlone);
            Assert.True(closed.LeastOverlap!.Value.Radians >= 0.0);
            Assert.Equal(0.0, Missing(closedCore), 1e-6);
            Assert.Equal(0.0, closed.GapArea.SquareArcminutes, 1e-6);
            if (need > 0.002)
            {
                var (open, openCore) = Measure(dec, need - 0.002, CameraTurning.LeftAlone);
                Assert.True(open.LeastOverlap!.Value.Radians < 0.0 || Missing(openCore) > 1e-6);
                Assert.True(open.GapArea.SquareArcminutes > 0.0);
            }
        }
    }

    [Fact]
    public void Of_TableOfTheRuleForNeighbours_HasOurMinimum()
    {
        var rows = CheckValues.Table("mosaic_rule");
        Assert.Equal(4, rows.Count);
        foreach (var row in rows)
        {
            var (outline, _) = Measure(CheckValues.Number(row[0]), 0.15, CameraTurning.LeftAlone);
            Near(row[3], outline.LeastOverlapInRows!.Value.Degrees / 4.5 * 100.0, 0.0051);
        }
    }

    [Theory]
    [InlineData(10.0, 0.0, false)]
    [InlineData(0.0, 84.0, false)]
    [InlineData(359.5, 89.5, true)]
    [InlineData(200.0, -88.0, true)]
    public void Of_CameraLeftAlone_AgreesWithSampling(double ra, double dec, bool mirrored)
    {
        var pose = new CameraPose(
            SkyDirection.FromDegrees(ra, dec),
            PositionAngle.FromDegrees(25.0)
        );
        var mosaic = Mosaic.Grid(
            pose,
            Field,
            new(0.02 * Field.TangentWidth, 0.02 * Field.TangentHeight),
            3,
            2,
            mirrored,
            CameraTurning.LeftAlone
        );
        var target = SkyOutline.Ellipse(
            pose.Centre,
            Angle.FromDegrees(14.0),
            Angle.FromDegrees(6.0),
            PositionAngle.FromDegrees(120.0)
        );

        var coverage = CoverageMeasure.Of(mosaic, target);

        // Directions spread evenly over a cap round the mosaic; covered or not by dot products with the panels' own axes.
        var random = new Random(7);
        const int Draws = 20_000;
        var capCos = Math.Cos(Angle.FromDegrees(9.0).Radians);
        var capArea = Math.Tau * (1.0 - capCos);
        int covered = 0,
            inTarget = 0,
            both = 0;
        for (var i = 0; i < Draws; i++)
        {
            var z = 1.0 - ((1.0 - capCos) * random.NextDouble());
            var at = pose.Centre.Offset(
                PositionAngle.FromDegrees(360.0 * random.NextDouble()),
                Angle.FromRadians(Math.Acos(z))
            );
            var isCovered = mosaic.Panels.Any(panel => Sees(panel.Pose, at));
            var isTarget = target.Areas[0].Contains(at);
            covered += isCovered ? 1 : 0;
            inTarget += isTarget ? 1 : 0;
            both += isCovered && isTarget ? 1 : 0;
        }

        Within5Sigma(covered, coverage.Area.Steradians / capArea);
        Within5Sigma(inTarget, coverage.TargetArea.Steradians / capArea);
        Within5Sigma(
            both,
            coverage.TargetCoveredFraction * coverage.TargetArea.Steradians / capArea
        );

        static void Within5Sigma(int count, double chance) =>
            Assert.InRange(
                count,
                (Draws * chance) - (5.0 * Math.Sqrt(Draws * chance * (1.0 - chance))),
                (Draws * chance) + (5.0 * Math.Sqrt(Draws * chance * (1.0 - chance)))
            );
    }

    [Fact]
    public void Of_PanelsApart_GapIsTheStripBetweenThem()
    {
        // Two panels with no overlap, one turned by a degree through the pole of the mount: a wedge opens on one side.
        var pose = new CameraPose(SkyDirection.FromDegrees(50.0, 60.0), PositionAngle.North);
        var mosaic = Mosaic.Grid(
            pose,
            Field,
            default,
            2,
            1,
            mirrored: false,
            CameraTurning.LeftAlone
        );

        var coverage = CoverageMeasure.Of(mosaic, Whole(mosaic));

        // Each panel's facing side leans by half the twist: the wedge is (H/2)² tan(twist) / 2 large, to second order.
        var twist = mosaic.Panels[0].Pose.Centre.PositionAngleTo(SkyDirection.NorthPole);
        Assert.Equal(0.0, PositionAngle.North.TurnTo(twist).Degrees, 1e-12);
        var side = Assert.Single(coverage.SharedSides);
        Assert.True(side.SideBySide);
        Assert.True(side.LeastDepth.Radians < 0.0);
        Assert.True(side.GreatestDepth.Radians > 0.0);
        Assert.Equal(side.LeastDepth, coverage.LeastOverlap);
        Assert.Null(coverage.LeastOverlapInColumns);
        var plane = new TangentPlane(pose.Centre);
        double a = plane.Project(mosaic.Panels[0].Corners[2]).Xi,
            b = plane.Project(mosaic.Panels[1].Corners[3]).Xi;
        var wedge = Assert.Single(coverage.Gaps).Area.Steradians;
        Assert.Equal((a - b) * Field.TangentHeight / 4.0, wedge, 0.06 * wedge);
        Assert.Equal(0.0, coverage.EnclosedHoleArea.Steradians);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Of_MirroredOrNot_IsTheSame(bool mirrored)
    {
        var pose = new CameraPose(
            SkyDirection.FromDegrees(0.0, 85.0),
            PositionAngle.FromDegrees(12.0)
        );
        var overlap = new PanelOverlap(0.15 * Field.TangentWidth, 0.15 * Field.TangentHeight);

        var mosaic = Mosaic.Grid(pose, Field, overlap, 3, 2, mirrored, CameraTurning.LeftAlone);
        var plain = Mosaic.Grid(
            pose,
            Field,
            overlap,
            3,
            2,
            mirrored: false,
            CameraTurning.LeftAlone
        );

        var (a, b) = (
            CoverageMeasure.Of(mosaic, Whole(plain)),
            CoverageMeasure.Of(plain, Whole(plain))
        );
        Assert.Equal(b.Area.SquareArcminutes, a.Area.SquareArcminutes, 1e-6);
        Assert.Equal(b.GapArea.SquareArcminutes, a.GapArea.SquareArcminutes, 1e-6);
        Assert.Equal(b.LeastOverlap!.Value.Arcminutes, a.LeastOverlap!.Value.Arcminutes, 1e-9);
    }

    [Fact]
    public void Of_AreasOverEachOther_CountOnce()
    {
        var pose = new CameraPose(SkyDirection.FromDegrees(0.0, 20.0), PositionAngle.North);
        var mosaic = Mosaic.Grid(
            pose,
            Field,
            default,
            1,
            1,
            mirrored: false,
            CameraTurning.LeftAlone
        );
        var half = Rectangle(pose.Centre, 6.0, 1.0, 90.0);

        var once = CoverageMeasure.Of(mosaic, half);
        var twice = CoverageMeasure.Of(mosaic, SkyOutline.Together([half, half]));

        Assert.Equal(half.Areas[0].Area.SquareArcminutes, once.TargetArea.SquareArcminutes, 1e-6);
        Assert.Equal(once.TargetArea.SquareArcminutes, twice.TargetArea.SquareArcminutes, 1e-6);
        Assert.Equal(once.TargetCoveredFraction, twice.TargetCoveredFraction, 1e-12);

        // 4.5 of 6 degrees lie inside, left and right stand out by the same.
        Assert.Equal(0.75, once.TargetCoveredFraction, 0.001);
        Assert.Equal(2, once.Uncovered.Count);
        Assert.Equal(
            once.Uncovered[0].Area.SquareArcminutes,
            once.Uncovered[1].Area.SquareArcminutes,
            1e-6
        );
        Assert.Null(once.LeastOverlap);
        Assert.Equal(Field.Area.SquareArcminutes, once.Area.SquareArcminutes, 1e-6);
    }

    [Theory]
    [InlineData(0.5, 1.0)]
    [InlineData(3.0, 0.0)]
    public void Of_TargetWithoutArea_CountsItsCorners(double declination, double expected)
    {
        var pose = new CameraPose(SkyDirection.FromDegrees(0.0, 0.0), PositionAngle.North);
        var mosaic = Mosaic.Grid(
            pose,
            Field,
            default,
            1,
            1,
            mirrored: false,
            CameraTurning.LeftAlone
        );
        var star = SkyDirection.FromDegrees(0.3, declination);

        var coverage = CoverageMeasure.Of(mosaic, new([new SkyPolygon([star, star, star])]));

        Assert.Equal(expected, coverage.TargetCoveredFraction);
    }

    [Fact]
    public void Of_OutlineWithItsFit_IsWhollyCovered()
    {
        var random = new Random(11);
        for (var run = 0; run < 100; run++)
        {
            var outline = RandomOutlines.OnTheSky(random);
            var size = Math.Max(Math.Tan(outline.Radius.Radians), 1e-4);
            var field = new FieldShape(size * 0.8, size * 0.6);
            var overlap = new PanelOverlap(0.1 * size, 0.1 * size);
            var fit = MosaicFit.LargestMargin(outline, field, overlap, GridWish.Fewest, 0.0, 100);
            var mosaic = Mosaic.Grid(
                fit.Frame.Pose,
                field,
                overlap,
                fit.Columns,
                fit.Rows,
                mirrored: false,
                CameraTurning.TurnedAtEachPanel
            );

            var coverage = CoverageMeasure.Of(mosaic, outline);

            // Panels away from the middle lie a little askew in its plane; with this overlap none of it reaches the rim.
            Assert.InRange(coverage.TargetCoveredFraction, 0.998, 1.0);
        }
    }

    private static (MosaicCoverage Outline, MosaicCoverage Core) Measure(
        double declination,
        double overlap,
        CameraTurning turning
    ) => Measure(Worked(declination, overlap, turning));

    private static Mosaic Worked(double declination, double overlap, CameraTurning turning) =>
        Mosaic.Grid(
            new(SkyDirection.FromDegrees(100.0, declination), PositionAngle.North),
            Field,
            new(overlap * Field.TangentWidth, overlap * Field.TangentHeight),
            3,
            2,
            mirrored: false,
            turning
        );

    /// <summary>The layout that a step in right ascension over the cosine gives: two rows of one declination each, north up.</summary>
    private static Mosaic AlongParallels(double declination, double overlap) =>
        Worked(declination, overlap, CameraTurning.LeftAlone)
            .AsShot([
                .. Enumerable
                    .Range(0, 6)
                    .Select(i =>
                    {
                        var dec = declination + ((i < 3 ? 0.5 : -0.5) * 3.0 * (1.0 - overlap));
                        var step = 4.5 * (1.0 - overlap) / Math.Cos(Angle.FromDegrees(dec).Radians);
                        return new CameraPose(
                            SkyDirection.FromDegrees(100.0 - (((i % 3) - 1) * step), dec),
                            PositionAngle.North
                        );
                    }),
            ]);

    private static (MosaicCoverage Outline, MosaicCoverage Core) Measure(Mosaic mosaic)
    {
        var core = new FieldShape(
            mosaic.WholeFrame.TangentWidth - Field.TangentWidth,
            mosaic.WholeFrame.TangentHeight - Field.TangentHeight
        );
        return (
            CoverageMeasure.Of(mosaic, Whole(mosaic)),
            CoverageMeasure.Of(
                mosaic,
                new([new SkyPolygon(core.Corners(mosaic.Pose, mirrored: false))])
            )
        );
    }

    /// <summary>The nominal outer rectangle of a mosaic.</summary>
    private static SkyOutline Whole(Mosaic mosaic) =>
        new([new SkyPolygon(mosaic.WholeFrame.Corners(mosaic.Pose, mosaic.Mirrored))]);

    private static SkyOutline Rectangle(
        SkyDirection centre,
        double along,
        double across,
        double angle
    ) =>
        SkyOutline.Rectangle(
            centre,
            Angle.FromDegrees(along),
            Angle.FromDegrees(across),
            PositionAngle.FromDegrees(angle)
        );

    private static double Missing(MosaicCoverage coverage) =>
        coverage.Uncovered.Sum(region => region.Area.SquareArcminutes);

    private static bool Sees(CameraPose pose, SkyDirection at)
    {
        var (u, v) = OutlineMeasure.Offset(at, pose);
        return Math.Abs(u) <= Field.TangentWidth / 2.0
            && Math.Abs(v) <= Field.TangentHeight / 2.0
            && at.SeparationTo(pose.Centre).Degrees < 89.0;
    }

    private static void Near(string cell, double value, double tolerance) =>
        Assert.Equal(CheckValues.Number(cell), value, tolerance);
}
