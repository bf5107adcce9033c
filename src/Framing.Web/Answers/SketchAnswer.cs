using Framing.Drawing;
using Framing.Mosaics;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Web;

/// <summary>Panels as the page draws them, with the figures that go with them.</summary>
internal sealed record SketchAnswer
{
    private const double ArcminutesPerTangent = 60.0 * 180.0 / Math.PI;

    public required PagePoint? Centre { get; init; }

    /// <summary>J2000, decimal degrees.</summary>
    public required double RaDeg { get; init; }

    public required double DecDeg { get; init; }

    public required double AngleDeg { get; init; }

    /// <summary>Direction of the displayed up of the mosaic in the picture, degrees clockwise from straight up.</summary>
    public required double LeanDeg { get; init; }

    public required IReadOnlyList<PanelAnswer> Panels { get; init; }

    /// <summary>Rings of what lies outside every panel.</summary>
    public required IReadOnlyList<IReadOnlyList<PagePoint>> FallsShort { get; init; }

    public required double MarginArcmin { get; init; }

    public required double CoveredFraction { get; init; }

    public required double GapArcmin2 { get; init; }

    public required double? LeastOverlapArcmin { get; init; }

    /// <summary>1 for a single panel.</summary>
    public required double ChanceNoGap { get; init; }

    /// <summary>True when the chance comes from drawn mosaics, false for the closed form.</summary>
    public required bool ChanceIsDrawn { get; init; }

    public static SketchAnswer Of(FramedPlan plan, ChartGeometry chart) =>
        Of(
            chart,
            plan.Pose,
            [.. plan.Panels.Select(panel => (panel.Number, panel.Centre, panel.Corners))],
            plan.Coverage,
            plan.TangentMargin,
            plan.Odds?.ChanceNoGap ?? 1.0,
            isDrawn: true
        );

    public static SketchAnswer Of(FramingSketch sketch, ChartGeometry chart) =>
        Of(
            chart,
            sketch.Pose,
            [.. sketch.Panels.Select(panel => (panel.Number, panel.Pose.Centre, panel.Corners))],
            sketch.Coverage,
            sketch.TangentMargin,
            sketch.ChanceNoGap,
            isDrawn: false
        );

    private static SketchAnswer Of(
        ChartGeometry chart,
        CameraPose pose,
        IReadOnlyList<(
            int Number,
            SkyDirection Centre,
            IReadOnlyList<SkyDirection> Corners
        )> panels,
        MosaicCoverage? coverage,
        double tangentMargin,
        double chance,
        bool isDrawn
    ) =>
        new()
        {
            Centre = Place(chart, pose.Centre),
            RaDeg = pose.Centre.RightAscension.Degrees,
            DecDeg = pose.Centre.Declination.Degrees,
            AngleDeg = pose.PositionAngle.Degrees,
            LeanDeg = Lean(chart, pose),
            Panels =
            [
                .. panels.Select(panel => new PanelAnswer(
                    panel.Number,
                    Place(chart, panel.Centre),
                    Ring(chart, panel.Corners)
                )),
            ],
            FallsShort =
            [
                .. (coverage?.Uncovered ?? [])
                    .SelectMany(region => region.Holes.Prepend(region.Outer))
                    .Select(ring => Ring(chart, ring)),
            ],
            MarginArcmin = tangentMargin * ArcminutesPerTangent,
            CoveredFraction = coverage?.TargetCoveredFraction ?? 0.0,
            GapArcmin2 = coverage?.GapArea.SquareArcminutes ?? 0.0,
            LeastOverlapArcmin = coverage?.LeastOverlap?.Arcminutes,
            ChanceNoGap = chance,
            ChanceIsDrawn = isDrawn,
        };

    private static double Lean(ChartGeometry chart, CameraPose pose)
    {
        var up = pose.Centre.Offset(pose.PositionAngle, Angle.FromArcminutes(1.0));
        return
            chart.TrySkyToPicture(pose.Centre, out var from)
            && chart.TrySkyToPicture(up, out var to)
            ? Math.Atan2(to.X - from.X, from.Y - to.Y) * 180.0 / Math.PI
            : 0.0;
    }

    private static PagePoint? Place(ChartGeometry chart, SkyDirection direction) =>
        chart.TrySkyToPicture(direction, out var point)
            ? new(Math.Round(point.X, 2), Math.Round(point.Y, 2))
            : null;

    private static List<PagePoint> Ring(ChartGeometry chart, IEnumerable<SkyDirection> ring) =>
        [.. ring.Select(corner => Place(chart, corner)).OfType<PagePoint>()];
}
