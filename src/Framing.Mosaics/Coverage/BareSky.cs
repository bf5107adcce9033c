using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>What panels leave bare: enclosed holes, and gaps between facing sides.</summary>
internal sealed class BareSky
{
    private readonly PanelUnion union;
    private readonly int[] holeOf;

    /// <summary>Finds the enclosed holes.</summary>
    /// <param name="union">The panels.</param>
    public BareSky(PanelUnion union)
    {
        this.union = union;
        var (regions, regionOf) = LoopNest.Regions(
            [.. union.Loops.Select(loop => loop.Reversed(-union.Far))],
            union.Far
        );

        // Where panels cover the place opposite the middle too, what is more than half of the sky is not shut in by them.
        Holes = [.. regions.Where(IsHole)];
        holeOf =
        [
            .. regionOf.Select(region => region >= 0 && IsHole(regions[region]) ? region : -1),
        ];

        static bool IsHole(SkyRegion region) => region.Area.Steradians < Math.Tau;
    }

    /// <summary>
    /// Bare sky that panels shut in: less than half of the sphere, and from it there is no way out between them to the
    /// place opposite the mosaic's middle.
    /// </summary>
    public IReadOnlyList<SkyRegion> Holes { get; }

    /// <summary>What lies bare in figures between facing sides, without what belongs to a hole.</summary>
    /// <param name="between">Corners of the figures; they may overlap each other and panels.</param>
    public IReadOnlyList<SkyRegion> Outside(IReadOnlyList<IReadOnlyList<SkyDirection>> between)
    {
        // The panels come first, so that their sides bear the same numbers as in the union.
        var panels = union.Panels;
        var all = panels.Copy();
        foreach (var ring in between)
        {
            all.Add([.. ring.Select(corner => corner.Vector)], 8.0 * union.Tolerance);
        }

        if (all.Count == panels.Count)
        {
            return [];
        }

        // The middle of a panel is never bare, however far the figures reach, and no border comes near it.
        var far = panels.Middles[0];
        var arcs = Border(all);
        var loops = LoopTracer.Loops(arcs, union.Reach, keepRight: false, -far);
        return LoopNest.Regions([.. loops.Where(loop => !InHole(arcs, loop))], far).Regions;
    }

    /// <summary>The border of what lies bare in the figures behind the panels.</summary>
    private List<ArcPiece> Border(ConvexFigures all)
    {
        var count = union.Panels.Count;
        var near = new NearLists(all, new FigureIndex(all));
        var sweep = new ArcSweep(
            all,
            near,
            SameLines.Of(all, near, union.Tolerance),
            count,
            union.Tolerance
        );
        List<ArcPiece> arcs = [];
        for (var figure = 0; figure < all.Count; figure++)
        {
            if (figure < count && !near.Of(figure).ContainsAnyInRange(count, int.MaxValue))
            {
                continue;
            }

            foreach (var piece in sweep.Of(figure))
            {
                if (piece.Over > 0 || (piece.To - piece.From).Length <= 4.0 * union.Tolerance)
                {
                    continue;
                }

                if (figure >= count && piece.OverSecond == 0)
                {
                    arcs.Add(piece);
                }
                else if (figure < count && piece.OverSecond > 0)
                {
                    arcs.Add(piece with { From = piece.To, To = piece.From });
                }
            }
        }

        return arcs;
    }

    private bool InHole(List<ArcPiece> arcs, SkyLoop loop)
    {
        // A piece that touches no panel has sky all round it: it is asked where it lies.
        var known = false;
        foreach (var number in loop.Pieces)
        {
            var arc = arcs[number];
            if (arc.Side < union.Panels.Sides)
            {
                var border = union.LoopAt(arc.Side, (arc.From + arc.To) * 0.5);
                if (border >= 0)
                {
                    known = true;
                    if (holeOf[border] >= 0)
                    {
                        return true;
                    }
                }
            }
        }

        return !known
            && union
                .Loops.Where((_, index) => holeOf[index] >= 0)
                .Any(hole => hole.Parts(loop.Corners[0], union.Far));
    }
}
