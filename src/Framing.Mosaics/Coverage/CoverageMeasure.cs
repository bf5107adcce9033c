using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Measures exactly what a mosaic covers, where it falls short and how far neighbours reach into each other.</summary>
/// <remarks>
/// Panels are convex figures of great-circle arcs anywhere on the sphere. Their sides are cut where they cross; nothing is
/// sampled, and no mosaic is too wide: areas are sums over arcs, gaps and holes are bounded by arcs. The cost grows with the
/// number of panels and of crossings.
/// </remarks>
public static class CoverageMeasure
{
    /// <summary>Pieces below this part of a panel are rounding.</summary>
    private const double Sliver = 1e-9;

    /// <summary>Measures a mosaic against a target.</summary>
    /// <param name="mosaic">The mosaic, up to the whole sky.</param>
    /// <param name="target">What is to be photographed.</param>
    /// <returns>What is covered.</returns>
    public static MosaicCoverage Of(Mosaic mosaic, SkyOutline target)
    {
        ArgumentNullException.ThrowIfNull(mosaic);
        ArgumentNullException.ThrowIfNull(target);
        return Of(
            mosaic.Panels,
            mosaic.Neighbours.Pairs,
            mosaic.Field,
            mosaic.Mirrored,
            mosaic.Pose.Centre,
            target
        );
    }

    /// <summary>Measures panels that need not stand in a grid.</summary>
    /// <param name="panels">The panels.</param>
    /// <param name="neighbours">Which of them face each other, by their places in the list.</param>
    /// <param name="field">One panel.</param>
    /// <param name="mirrored">True when the displayed picture is mirrored.</param>
    /// <param name="middle">The middle of the mosaic.</param>
    /// <param name="target">What is to be photographed.</param>
    internal static MosaicCoverage Of(
        IReadOnlyList<Panel> panels,
        IReadOnlyList<PanelPair> neighbours,
        FieldShape field,
        bool mirrored,
        SkyDirection middle,
        SkyOutline target
    )
    {
        var union = new PanelUnion(Figures(panels), middle.Vector);
        var bare = new BareSky(union);
        var pairs = neighbours
            .Select(pair =>
                NeighbourSides.Measured(
                    panels[pair.First],
                    panels[pair.Second],
                    pair.AlongWidth,
                    field,
                    mirrored
                )
            )
            .ToList();
        var least = Sliver * field.Area.Steradians;
        var holes = Larger(bare.Holes, least);
        List<SkyRegion> gaps =
        [
            .. holes,
            .. Larger(
                bare.Outside([.. pairs.SelectMany(pair => pair.Gaps).Where(gap => gap.Count > 0)]),
                least
            ),
        ];
        var cover = new TargetCover(union, target);
        var aim = cover.Area.Steradians;
        var missing = Larger(cover.Uncovered(), Math.Min(least, Sliver * aim));
        return new()
        {
            Area = SolidAngle.FromSteradians(union.AtLeast.Count > 0 ? union.AtLeast[0] : 0.0),
            AreaByDepth =
            [
                .. union.AtLeast.Select(
                    (area, depth) =>
                        SolidAngle.FromSteradians(
                            Math.Max(0.0, area - union.AtLeast.ElementAtOrDefault(depth + 1))
                        )
                ),
            ],
            TargetArea = cover.Area,
            TargetCoveredFraction =
                aim > least
                    ? Math.Max(0.0, 1.0 - (Sum(missing).Steradians / aim))
                    : cover.CornersCovered(),
            Uncovered = missing,
            SharedSides = [.. pairs.Select(pair => pair.Side)],
            Gaps = gaps,
            GapArea = Sum(gaps),
            EnclosedHoleArea = Sum(holes),
        };
    }

    private static ConvexFigures Figures(IReadOnlyList<Panel> panels)
    {
        var figures = new ConvexFigures();
        Span<Vector3D> ring = stackalloc Vector3D[4];
        foreach (var panel in panels)
        {
            for (var k = 0; k < ring.Length; k++)
            {
                ring[k] = panel.Corners[k].Vector;
            }

            figures.Add(ring, 0.0);
        }

        return figures;
    }

    private static List<SkyRegion> Larger(IEnumerable<SkyRegion> regions, double least) =>
        [.. regions.Where(region => region.Area.Steradians > least)];

    private static SolidAngle Sum(IEnumerable<SkyRegion> regions) =>
        regions.Aggregate(default(SolidAngle), (sum, region) => sum + region.Area);
}
