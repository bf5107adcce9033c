using Framing.Sky;
using NetTopologySuite.Geometries;

namespace Framing.Mosaics;

/// <summary>Measures exactly what a mosaic covers, where it falls short and how far neighbours reach into each other.</summary>
/// <remarks>
/// <para>
/// Panels are convex figures of great-circle arcs, and those are straight lines in any tangent plane: everything is done
/// with polygons in the plane of the mosaic's middle, nothing is sampled, and areas go back to the sphere by spherical
/// excess.
/// </para>
/// <para>
/// One plane holds what lies within <see cref="WidestReach"/> of the mosaic's middle. A wider mosaic is answered by a
/// result without a measure that says how far it reaches.
/// </para>
/// </remarks>
public static class CoverageMeasure
{
    /// <summary>Pieces below this part of a panel are rounding of the plane's coordinates.</summary>
    private const double Sliver = 1e-9;

    /// <summary>How far from the middle of the mosaic a corner of a panel or of the target may lie: 80°.</summary>
    public static Angle WidestReach => Angle.FromDegrees(80.0);

    /// <summary>Measures a mosaic against a target.</summary>
    /// <param name="mosaic">The mosaic.</param>
    /// <param name="target">What is to be photographed.</param>
    /// <returns>What is covered, or that the mosaic is too wide for one tangent plane.</returns>
    public static CoverageResult Of(Mosaic mosaic, SkyOutline target)
    {
        ArgumentNullException.ThrowIfNull(mosaic);
        ArgumentNullException.ThrowIfNull(target);
        var middle = mosaic.Pose.Centre;
        var reach = mosaic
            .Panels.SelectMany(panel => panel.Corners)
            .Concat(target.Corners)
            .Select(corner => corner.SeparationTo(middle))
            .Aggregate(Angle.Max);
        if (reach > WidestReach || Neighbours(mosaic).Any(StandTooFarApart))
        {
            return CoverageResult.TooWide(reach);
        }

        var sheet = new PlaneSheet(new TangentPlane(middle));
        var covered = PlaneSheet.Union(mosaic.Panels.Select(panel => sheet.Figure(panel.Corners)));
        var pairs = Neighbours(mosaic).Select(pair => Measured(mosaic, pair)).ToList();
        var holes = PlaneSheet.Enclosed(covered);
        var between = pairs
            .SelectMany(pair => pair.Gaps)
            .Where(gap => gap.Count > 0)
            .Select(sheet.Figure);
        var least = SolidAngle.FromSteradians(Sliver * mosaic.Field.Area.Steradians);
        var gaps = sheet.Regions(
            PlaneSheet.Union([PlaneSheet.Without(PlaneSheet.Union(between), covered), holes]),
            least
        );
        var aim = PlaneSheet.Union(target.Areas.Select(area => sheet.Figure(area.Corners)));
        var aimArea = PlaneSheet.Area(aim);
        var leastOfAim = SolidAngle.FromSteradians(
            Math.Min(least.Steradians, Sliver * aimArea.Steradians)
        );
        var missing = sheet.Regions(PlaneSheet.Without(aim, covered), leastOfAim);
        return CoverageResult.Measured(
            new()
            {
                Area = PlaneSheet.Area(covered),
                TargetArea = aimArea,
                TargetCoveredFraction =
                    aimArea.Steradians > least.Steradians
                        ? 1.0 - (Sum(missing).Steradians / aimArea.Steradians)
                        : CornersCovered(sheet, covered, target),
                Uncovered = missing,
                SharedSides = [.. pairs.Select(pair => pair.Side)],
                Gaps = gaps,
                GapArea = Sum(gaps),
                EnclosedHoleArea = Sum(sheet.Regions(holes, least)),
            },
            reach
        );
    }

    private static SolidAngle Sum(IEnumerable<SkyRegion> regions) =>
        regions.Aggregate(default(SolidAngle), (sum, region) => sum + region.Area);

    private static double CornersCovered(PlaneSheet sheet, Geometry covered, SkyOutline target) =>
        (double)target.Corners.Count(corner => sheet.Covers(covered, corner))
        / target.Corners.Count;

    /// <summary>Pairs side by side first, then pairs one above the other, in reading order.</summary>
    private static IEnumerable<(Panel First, Panel Second, bool SideBySide)> Neighbours(
        Mosaic mosaic
    ) =>
        mosaic.Neighbours.Pairs.Select(pair =>
            (mosaic.Panels[pair.First], mosaic.Panels[pair.Second], pair.AlongWidth)
        );

    /// <summary>True when a corner of one panel has no image in the plane of its neighbour, or nearly none.</summary>
    private static bool StandTooFarApart((Panel First, Panel Second, bool SideBySide) pair) =>
        pair.Second.Corners.Any(c => c.SeparationTo(pair.First.Pose.Centre) > WidestReach)
        || pair.First.Corners.Any(c => c.SeparationTo(pair.Second.Pose.Centre) > WidestReach);

    private static (SharedSide Side, IReadOnlyList<SkyDirection>[] Gaps) Measured(
        Mosaic mosaic,
        (Panel First, Panel Second, bool SideBySide) pair
    )
    {
        var (first, second, sideBySide) = pair;
        var (across, along) = (mosaic.Field.TangentWidth / 2.0, mosaic.Field.TangentHeight / 2.0);
        var (halfDepth, halfSide) = sideBySide ? (across, along) : (along, across);

        // Corners run top-left 0, top-right 1, bottom-right 2, bottom-left 3. A quarter turn clockwise from up is right.
        var right = Angle.FromDegrees(mosaic.Mirrored ? 90.0 : -90.0);
        var turn = sideBySide ? right : Angle.FromDegrees(180.0);
        var fromFirst = FacingSides.Look(
            first.Pose,
            first.Pose.PositionAngle.TurnedBy(turn),
            halfDepth,
            halfSide,
            second.Corners[0],
            second.Corners[sideBySide ? 3 : 1]
        );
        var fromSecond = FacingSides.Look(
            second.Pose,
            second.Pose.PositionAngle.TurnedBy(turn).Opposite,
            halfDepth,
            halfSide,
            first.Corners[2],
            first.Corners[sideBySide ? 1 : 3]
        );
        Angle least,
            greatest;
        if (fromFirst.Depth is { } a && fromSecond.Depth is { } b)
        {
            double[] depths = [a.Low, a.High, b.Low, b.High];
            least = FacingSides.AtRim(halfDepth, depths.Min());
            greatest = FacingSides.AtRim(halfDepth, depths.Max());
        }
        else
        {
            least = greatest = -(sideBySide ? mosaic.Field.Width : mosaic.Field.Height);
        }

        return (
            new(first.Number, second.Number, sideBySide, least, greatest),
            [fromFirst.Gap, fromSecond.Gap]
        );
    }
}
