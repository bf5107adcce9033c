using Framing.Sky;

namespace Framing.Mosaics.Tests;

public sealed class ClosingTrialsTests
{
    private static readonly SkyDirection Middle = SkyDirection.FromDegrees(40.0, 35.0);

    [Fact]
    public void Of_TwoHundredPairs_AgreesWithTheClosedForm()
    {
        // Below 1 degree of camera-angle sigma the closed form is good to 0.001; up to 2 degrees it is up to 0.003 low,
        // because turned panels also slide along each other and face each other over less.
        var random = new Random(200);
        List<string> off = [];
        for (var i = 0; i < 200; i++)
        {
            var large = i % 2 == 1;
            var turn = (large ? 1.0 : 0.0) + random.NextDouble();
            var errors = Errors(1.0 + (9.0 * random.NextDouble()), turn);
            var field = new FieldShape(
                Tangent(150.0 + (150.0 * random.NextDouble())),
                Tangent(150.0 + (150.0 * random.NextDouble()))
            );
            var sideBySide = random.Next(2) == 0;
            var side = sideBySide ? field.TangentHeight : field.TangentWidth;
            var wanted = 0.8 + (0.199 * random.NextDouble());
            var overlap = GapChance.SmallestOverlap(wanted, side, errors);
            var mosaic = Grid(
                field,
                new(overlap, overlap),
                sideBySide ? 2 : 1,
                sideBySide ? 1 : 2,
                SkyDirection.FromDegrees(
                    360.0 * random.NextDouble(),
                    170.0 * random.NextDouble() - 85.0
                )
            );

            var chance = ClosingTrials
                .Of(mosaic, errors, settings: new() { Seed = (ulong)i })
                .ChanceNoGap;

            var room =
                (4.0 * Math.Sqrt(wanted * (1.0 - wanted) / 20_000.0)) + (large ? 0.003 : 0.001);
            if (Math.Abs(chance - wanted) > room)
            {
                off.Add(
                    FormattableString.Invariant(
                        $"{i}: {chance} for {wanted}, overlap {overlap * 3437.75:0.0}', {errors}"
                    )
                );
            }
        }

        Assert.True(off.Count == 0, string.Join("\n", off));
    }

    [Theory]
    [InlineData(5.0, 0.3)]
    [InlineData(10.0, 0.5)]
    public void Of_ThreeByTwo_AgreesWithDrawnGrids(double sigma, double turn)
    {
        // maths: seven pairs at 0.99^(1/7) each, drawn: 0.9899, 0.9900 (tests/reference/mosaics/t08_overlap.py).
        var field = new FieldShape(Tangent(270.0), Tangent(180.0));
        var errors = Errors(sigma, turn);
        var overlap = GapChance.SmallestOverlap(0.99, field, 3, 2, errors);

        var odds = ClosingTrials.Of(Grid(field, overlap, 3, 2), errors);

        Assert.Equal(0.99, odds.ChanceNoGap, 0.003);
        Assert.Equal(20_000, odds.Trials);
        Assert.InRange(odds.WeakestPair!.Value.Chance, 0.0003, 0.01);
        Assert.Null(odds.ChanceTargetCovered);
    }

    [Fact]
    public void Of_ThreeByTwoThatMostlyTurn_IsCoveredAcrossTheCorners()
    {
        // Where turning parts two panels, the wedge is widest at its end, and inside the mosaic the panels across the corner
        // cover some of that. Every shared side has at most one such end here, so half of the gaps at most can go.
        var field = new FieldShape(Tangent(270.0), Tangent(180.0));
        var errors = Errors(2.0, 1.0);
        var overlap = GapChance.SmallestOverlap(0.97, field, 3, 2, errors);

        var chance = ClosingTrials.Of(Grid(field, overlap, 3, 2), errors).ChanceNoGap;

        Assert.InRange(chance, 0.97, 0.988);
    }

    [Fact]
    public void Of_AnyNumberOfThreads_IsTheSameAnswer()
    {
        var mosaic = Grid(new(0.08, 0.05), new(0.006, 0.006), 3, 2);
        var target = SkyOutline.Rectangle(
            Middle,
            Angle.FromDegrees(5.0),
            Angle.FromDegrees(11.5),
            PositionAngle.North
        );
        var errors = Errors(5.0, 1.0);

        var one = ClosingTrials.Of(mosaic, errors, target, new() { Seed = 9, MostThreads = 1 });

        Assert.Equal(one, ClosingTrials.Of(mosaic, errors, target, new() { Seed = 9 }));
        Assert.Equal(
            one,
            ClosingTrials.Of(mosaic, errors, target, new() { Seed = 9, MostThreads = 7 })
        );
        Assert.NotEqual(one, ClosingTrials.Of(mosaic, errors, target, new() { Seed = 10 }));
        Assert.InRange(one.ChanceNoGap, 0.3, 0.99);
    }

    [Fact]
    public void Of_PairWithoutTurns_HasTheGapAreaOfTheFormula()
    {
        // s = sqrt(2) sigma: the sides part by s phi(o/s) - o Phi(-o/s) in the mean and face each other over
        // L - s sqrt(2/pi) (mean of a normal value above a floor, and of its size; both are independent).
        var sigma = Angle.FromArcminutes(6.0).Radians * Math.Sqrt(2.0);
        const double Overlap = 0.0015,
            Length = 0.03;
        var x = Overlap / sigma;
        var density = Math.Exp(-x * x / 2.0) / Math.Sqrt(Math.Tau);
        var expected =
            ((sigma * density) - (Overlap * NormalDistribution.Cumulative(-x)))
            * (Length - (sigma * Math.Sqrt(2.0 / Math.PI)));
        var mosaic = Grid(new(0.04, Length), new(Overlap, Overlap), 2, 1);

        var odds = ClosingTrials.Of(mosaic, Errors(6.0, 0.0), settings: new() { Trials = 100_000 });

        // One trial varies about as much as its mean: 1 % is 3 standard errors and more.
        Assert.Equal(expected, odds.ExpectedGapArea.Steradians, 0.015 * expected);
        Assert.Equal(NormalDistribution.Cumulative(x), odds.ChanceNoGap, 0.006);
        Assert.Equal((1, 2), (odds.WeakestPair!.Value.First, odds.WeakestPair.Value.Second));
        Assert.Equal(1.0 - odds.ChanceNoGap, odds.WeakestPair.Value.Chance, 1e-12);
    }

    [Fact]
    public void Of_CommonTurn_FindsTheHolesWhereFourPanelsMeet()
    {
        // All panels turned alike: no pair parts, but beyond the angle of CommonTurn a hole opens at every junction.
        var field = new FieldShape(0.009, 0.006);
        var overlap = new PanelOverlap(0.0009, 0.0006);
        var first = CommonTurn.FirstHole(field, overlap)!.Value;
        var sigma = Angle.FromDegrees(7.0);
        const int Steps = 4000;
        var expected = 0.0;
        for (var i = 0; i < Steps; i++)
        {
            var z = 5.0 * (i + 0.5) / Steps;
            var hole = CommonTurn.Hole(field, overlap, sigma * z).Steradians;
            expected +=
                4.0 * hole * 2.0 * Math.Exp(-z * z / 2.0) / Math.Sqrt(Math.Tau) * 5.0 / Steps;
        }

        var odds = ClosingTrials.Of(
            Grid(field, overlap, 3, 3),
            default,
            settings: new() { SharedAngleSigma = sigma }
        );

        var closed = (2.0 * NormalDistribution.Cumulative(first.Radians / sigma.Radians)) - 1.0;
        Assert.Equal(closed, odds.ChanceNoGap, 4.0 * Math.Sqrt(closed * (1.0 - closed) / 20_000.0));
        Assert.Equal(expected, odds.ExpectedGapArea.Steradians, 0.1 * expected);
        Assert.Null(odds.WeakestPair);
    }

    [Fact]
    public void Of_SharedPointing_OpensNothingButLosesTheTarget()
    {
        var mosaic = Grid(new(0.05, 0.04), new(0.002, 0.002), 2, 2);
        var target = SkyOutline.Rectangle(
            Middle,
            Angle.FromRadians(0.07),
            Angle.FromRadians(0.09),
            PositionAngle.North
        );

        var odds = ClosingTrials.Of(
            mosaic,
            default,
            target,
            new() { SharedPointingSigma = Angle.FromArcminutes(15.0) }
        );

        // The frame is 0.098 by 0.078: margins of 0.0039 (about) on all sides, each axis by itself.
        var axis =
            (2.0 * NormalDistribution.Cumulative(0.0039 / Angle.FromArcminutes(15.0).Radians))
            - 1.0;
        Assert.Equal(1.0, odds.ChanceNoGap);
        Assert.Equal(axis * axis, odds.ChanceTargetCovered!.Value, 0.02);
    }

    [Fact]
    public void Of_DitheringAndDrift_AreTakenOffAsInTheClosedForm()
    {
        var field = new FieldShape(Tangent(200.0), Tangent(150.0));
        var errors = Errors(4.0, 0.2) with
        {
            Dither = Angle.FromArcminutes(1.5),
            Drift = Angle.FromArcminutes(4.0),
        };
        var overlap = GapChance.SmallestOverlap(0.9, field.TangentHeight, errors);

        var odds = ClosingTrials.Of(Grid(field, new(overlap, overlap), 2, 1), errors);

        Assert.Equal(0.9, odds.ChanceNoGap, (4.0 * Math.Sqrt(0.09 / 20_000.0)) + 0.001);
    }

    [Fact]
    public void Of_CameraLeftAloneNearThePole_IsLessLikelyToClose()
    {
        var field = new FieldShape(0.08, 0.05);
        var overlap = new PanelOverlap(0.006, 0.006);
        var pose = new CameraPose(SkyDirection.FromDegrees(0.0, 75.0), PositionAngle.North);
        var alone = Mosaic.Grid(pose, field, overlap, 3, 1, false, CameraTurning.LeftAlone);
        var turned = Mosaic.Grid(
            pose,
            field,
            overlap,
            3,
            1,
            false,
            CameraTurning.TurnedAtEachPanel
        );

        var left = ClosingTrials.Of(alone, Errors(3.0, 0.5)).ChanceNoGap;

        Assert.True(ClosingTrials.Of(turned, Errors(3.0, 0.5)).ChanceNoGap > 0.99);
        Assert.InRange(left, 0.0, 0.8);
    }

    [Fact]
    public void Of_NoErrors_IsWhatCoverageMeasures()
    {
        // Anywhere on the sky, the camera left alone: a gap here is a gap there, of the same area. Only the sky at a
        // junction that is open to a parted pair may be left out of the mean area.
        var random = new Random(4);
        List<string> off = [];
        var withGaps = 0;
        for (var i = 0; i < 150; i++)
        {
            var field = new FieldShape(
                0.03 + (0.05 * random.NextDouble()),
                0.03 + (0.05 * random.NextDouble())
            );
            var part = 0.02 + (0.15 * random.NextDouble());
            var middle = SkyDirection.FromDegrees(
                360.0 * random.NextDouble(),
                (random.Next(2) == 0 ? 1.0 : -1.0) * (50.0 + (38.0 * random.NextDouble()))
            );
            var mosaic = Mosaic.Grid(
                new(middle, PositionAngle.FromDegrees(360.0 * random.NextDouble())),
                field,
                new(part * field.TangentWidth, part * field.TangentHeight),
                random.Next(1, 5),
                random.Next(1, 5),
                i % 3 == 0,
                CameraTurning.LeftAlone
            );
            var target = SkyOutline.Ellipse(
                middle,
                Angle.FromDegrees(1.0),
                Angle.FromDegrees(1.0),
                PositionAngle.North
            );
            var measured = CoverageMeasure.Of(mosaic, target);

            var odds = ClosingTrials.Of(mosaic, default, target, new() { Trials = 1 });

            var (area, drawn) = (measured.GapArea.Steradians, odds.ExpectedGapArea.Steradians);
            withGaps += area > 0.0 ? 1 : 0;
            var closes =
                area == 0.0 && measured.SharedSides.All(side => side.LeastDepth.Radians > -0.01);
            var covered = measured.TargetCoveredFraction == 1.0;
            if (
                (odds.ChanceNoGap == 1.0) != closes
                || (odds.ChanceTargetCovered == 1.0) != covered
                || drawn > area * (1.0 + 1e-6)
                || drawn < (area - measured.EnclosedHoleArea.Steradians) * (1.0 - 1e-6)
            )
            {
                off.Add(
                    FormattableString.Invariant(
                        $"{i}: {mosaic.Columns} x {mosaic.Rows} at {middle}: {area} {drawn} {odds.ChanceNoGap} {measured.EnclosedHoleArea.Steradians} {measured.LeastOverlap} {covered} {odds.ChanceTargetCovered}"
                    )
                );
            }
        }

        Assert.True(off.Count == 0, string.Join("\n", off));
        Assert.InRange(withGaps, 30, 120);
    }

    [Theory]
    [InlineData(2, 1, 4.0, 0.5, 7.8, 2.75)]
    [InlineData(2, 2, 3.0, 1.0, 7.9, 5.4)]
    [InlineData(1, 1, 6.0, 2.0, 3.9, 2.75)]
    public void Of_Target_AgreesWithSampledPlaces(
        int columns,
        int rows,
        double sigma,
        double turn,
        double major,
        double minor
    )
    {
        var field = new FieldShape(0.076, 0.052);
        var overlap = new PanelOverlap(0.009, 0.007);
        var pose = new CameraPose(Middle, PositionAngle.FromDegrees(70.0));
        var mosaic = Mosaic.Grid(
            pose,
            field,
            overlap,
            columns,
            rows,
            true,
            CameraTurning.LeftAlone
        );
        var (a, b) = (Angle.FromDegrees(major), Angle.FromDegrees(minor));
        var target = SkyOutline.Ellipse(Middle, a, b, PositionAngle.FromDegrees(160.0));
        var errors = Errors(sigma, turn);

        var chance = ClosingTrials.Of(mosaic, errors, target).ChanceTargetCovered!.Value;

        // By another way: places on the border and inside, panels drawn by steps on the sky.
        const int Draws = 2_000;
        var random = new Random(3);
        var places = Places(target);
        var covered = 0;
        for (var i = 0; i < Draws; i++)
        {
            var poses = mosaic
                .Panels.Select(panel => new CameraPose(
                    panel
                        .Pose.Centre.Offset(
                            PositionAngle.North,
                            Angle.FromArcminutes(sigma * Normal(random))
                        )
                        .Offset(
                            PositionAngle.FromDegrees(90.0),
                            Angle.FromArcminutes(sigma * Normal(random))
                        ),
                    panel.Pose.PositionAngle.TurnedBy(Angle.FromDegrees(turn * Normal(random)))
                ))
                .Select(drawn => Sides(drawn, field.Corners(drawn, mirrored: true)))
                .ToList();
            covered += places.TrueForAll(place =>
                poses.Exists(sides =>
                    Array.TrueForAll(sides, side => side.Dot(place.Vector) >= 0.0)
                )
            )
                ? 1
                : 0;
        }

        var sampled = (double)covered / Draws;
        Assert.InRange(chance, 0.1, 0.97);
        Assert.Equal(sampled, chance, (4.5 * Math.Sqrt(chance * (1.0 - chance) / Draws)) + 0.002);
    }

    [Fact]
    public void Of_SinglePanelWithoutErrors_IsCertain()
    {
        var target = SkyOutline.Ellipse(
            Middle,
            Angle.FromDegrees(1.0),
            Angle.FromDegrees(1.0),
            PositionAngle.North
        );

        var odds = ClosingTrials.Of(
            Grid(new(0.05, 0.04), default, 1, 1),
            default,
            target,
            new() { Trials = 10 }
        );

        Assert.Equal((10, 1.0, 1.0), (odds.Trials, odds.ChanceNoGap, odds.ChanceTargetCovered));
        Assert.Equal(0.0, odds.ExpectedGapArea.Steradians);
        Assert.Null(odds.WeakestPair);
    }

    [Fact]
    public void Of_NoTrialsOrNegativeErrors_Throws()
    {
        var mosaic = Grid(new(0.05, 0.04), default, 2, 1);
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            ClosingTrials.Of(mosaic, default, settings: new() { Trials = 0 })
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            ClosingTrials.Of(mosaic, Errors(-1.0, 0.0))
        );
    }

    /// <summary>For each side of a panel a vector that points to its middle's side.</summary>
    private static Vector3D[] Sides(CameraPose pose, IReadOnlyList<SkyDirection> corners) =>
        [
            .. corners.Select(
                (corner, i) =>
                {
                    var normal = corner.Vector.Cross(corners[(i + 1) % 4].Vector);
                    return normal.Dot(pose.Centre.Vector) > 0.0 ? normal : -normal;
                }
            ),
        ];

    private static List<SkyDirection> Places(SkyOutline target)
    {
        List<SkyDirection> places = [];
        var corners = target.Areas[0].Corners;
        for (var i = 0; i < corners.Count; i++)
        {
            var middle = corners[i].MidpointTo(corners[(i + 1) % corners.Count]);
            places.AddRange([corners[i], middle]);
            foreach (var part in (double[])[0.2, 0.45, 0.7, 0.9])
            {
                places.Add(
                    Middle.Offset(
                        Middle.PositionAngleTo(middle),
                        Middle.SeparationTo(middle) * part
                    )
                );
            }
        }

        return places;
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2.0 * Math.Log(1.0 - random.NextDouble()))
        * Math.Cos(Math.Tau * random.NextDouble());

    private static Mosaic Grid(
        FieldShape field,
        PanelOverlap overlap,
        int columns,
        int rows,
        SkyDirection? middle = null
    ) =>
        Mosaic.Grid(
            new(middle ?? Middle, PositionAngle.North),
            field,
            overlap,
            columns,
            rows,
            mirrored: false,
            CameraTurning.TurnedAtEachPanel
        );

    private static double Tangent(double arcminutes) => Angle.FromArcminutes(arcminutes).Radians;

    private static PanelErrors Errors(double arcminutes, double degrees) =>
        new(Angle.FromArcminutes(arcminutes), Angle.FromDegrees(degrees), Angle.Zero, Angle.Zero);
}
