using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>What frames that were taken anyhow cover of an area.</summary>
/// <param name="CoveredFraction">Part of the area that at least one frame covers, 0 to 1.</param>
/// <param name="Missing">The area that none covers.</param>
/// <param name="Uncovered">The pieces that none covers.</param>
public sealed record FrameCoverage(
    double CoveredFraction,
    SolidAngle Missing,
    IReadOnlyList<SkyRegion> Uncovered
)
{
    /// <summary>Pieces below this part of the area are rounding.</summary>
    private const double Sliver = 1e-7;

    /// <summary>Measures frames against an area.</summary>
    /// <param name="frames">Outer corners of each frame, four, in order.</param>
    /// <param name="area">The area, within 90° of its middle.</param>
    /// <returns>What is covered; the same exact geometry as for a planned mosaic.</returns>
    public static FrameCoverage Of(
        IReadOnlyList<IReadOnlyList<SkyDirection>> frames,
        SkyOutline area
    )
    {
        ArgumentNullException.ThrowIfNull(frames);
        ArgumentNullException.ThrowIfNull(area);
        if (frames.Count == 0)
        {
            // One frame on the other side of the sky covers nothing of it.
            frames =
            [
                new FieldShape(0.001, 0.001).Corners(
                    new(area.Middle.Antipode, PositionAngle.North),
                    mirrored: false
                ),
            ];
        }

        var figures = new ConvexFigures();
        foreach (var frame in frames)
        {
            figures.Add([.. frame.Select(corner => corner.Vector)], 0.0);
        }

        var cover = new TargetCover(new PanelUnion(figures, area.Middle.Vector), area);
        var whole = cover.Area.Steradians;
        List<SkyRegion> missing =
        [
            .. cover.Uncovered().Where(region => region.Area.Steradians > whole * Sliver),
        ];
        var lacking = missing.Aggregate(default(SolidAngle), (sum, region) => sum + region.Area);
        return new(Math.Clamp(1.0 - (lacking.Steradians / whole), 0.0, 1.0), lacking, missing);
    }
}
