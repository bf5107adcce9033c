using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>What panels cover together: area by depth, the border of it, and the bare sky that it encloses.</summary>
/// <remarks>
/// No polygon is built where a figure is enough: the sky that at least k panels cover is bordered by the pieces of sides over
/// which k - 1 other panels lie, and its area is a sum over them. Only the border of all, which is short in a mosaic that
/// closes, is joined into loops.
/// </remarks>
internal sealed class PanelUnion
{
    /// <summary>Sides within this part of a panel's shortest side of one line lie on one line.</summary>
    private const double SameLine = 1e-11;

    /// <summary>What a unit vector holds: less than this is rounding.</summary>
    private const double Rounding = 4e-15;

    private readonly int[] loopOf;
    private readonly int[] firstOfSide;

    /// <summary>Works it out.</summary>
    /// <param name="panels">The panels.</param>
    /// <param name="middle">The middle of the mosaic: the opposite place lies outside, where no panel covers it.</param>
    public PanelUnion(ConvexFigures panels, Vector3D middle)
    {
        Panels = panels;
        Index = new(panels);
        var shortest = double.MaxValue;
        for (var i = 0; i < panels.Count; i++)
        {
            shortest = Math.Min(shortest, panels.ShortestSide(i));
        }

        Tolerance = Math.Max(Rounding, SameLine * Math.Min(shortest, 1.0));
        Reach = 1e3 * Tolerance;
        Far = ClearPlace(-middle, shortest);
        var near = new NearLists(panels, Index);
        var sweep = new ArcSweep(
            panels,
            near,
            SameLines.Of(panels, near, Tolerance),
            panels.Count,
            Tolerance
        );
        firstOfSide = new int[panels.Sides + 1];
        var areas = new List<double>();
        for (var i = 0; i < panels.Count; i++)
        {
            Take(sweep.Of(i), areas);
        }

        for (var side = 1; side <= panels.Sides; side++)
        {
            firstOfSide[side] = Math.Max(firstOfSide[side], firstOfSide[side - 1]);
        }

        Loops = LoopTracer.Loops(Border, Reach, keepRight: true, -Far);
        loopOf = new int[Border.Count];
        for (var loop = 0; loop < Loops.Count; loop++)
        {
            foreach (var arc in Loops[loop].Pieces)
            {
                loopOf[arc] = loop;
            }
        }

        var coveringFar = PanelsAt(Far);
        for (var depth = 0; depth < Math.Max(areas.Count, coveringFar); depth++)
        {
            if (depth == areas.Count)
            {
                areas.Add(0.0);
            }

            // Loops are closed to the last bit, loose pieces need not be.
            areas[depth] = depth == 0 ? Loops.Sum(loop => loop.SignedArea) : areas[depth];
            areas[depth] += depth < coveringFar ? 4.0 * Math.PI : 0.0;
        }

        AtLeast = [.. areas.Select(area => Math.Max(0.0, area))];
    }

    /// <summary>The panels.</summary>
    public ConvexFigures Panels { get; }

    /// <summary>Finds panels near a place.</summary>
    public FigureIndex Index { get; }

    /// <summary>How far from a line counts as on it.</summary>
    public double Tolerance { get; }

    /// <summary>How far apart the ends of arcs that meet may lie.</summary>
    public double Reach { get; }

    /// <summary>The place that lies outside, opposite the middle of the mosaic or close to that, off every side.</summary>
    public Vector3D Far { get; }

    /// <summary>The area that at least 1, 2, 3… panels cover, in steradians.</summary>
    public IReadOnlyList<double> AtLeast { get; }

    /// <summary>The pieces of sides that no other panel covers, side by side; panels lie to the left, bare sky to the right.</summary>
    public List<ArcPiece> Border { get; } = [];

    /// <summary>The border in loops.</summary>
    public IReadOnlyList<SkyLoop> Loops { get; }

    /// <summary>The loop of the border that a place on it belongs to; -1 when the side is covered there.</summary>
    /// <param name="side">The side that the place lies on.</param>
    /// <param name="place">The place.</param>
    public int LoopAt(int side, Vector3D place)
    {
        var start = Panels.Corners[side];
        var away = (place - start).Length;
        for (var i = firstOfSide[side]; i < firstOfSide[side + 1]; i++)
        {
            if (
                (Border[i].From - start).Length <= away + Reach
                && (Border[i].To - start).Length >= away - Reach
            )
            {
                return loopOf[i];
            }
        }

        return -1;
    }

    /// <summary>How many panels cover a place.</summary>
    public int PanelsAt(Vector3D place)
    {
        var near = new List<int>();
        Index.Near(place, 0.0, near);
        return near.Count(panel => Panels.Holds(panel, place));
    }

    private void Take(List<ArcPiece> pieces, List<double> areas)
    {
        foreach (var piece in pieces)
        {
            while (areas.Count <= piece.Over)
            {
                areas.Add(0.0);
            }

            areas[piece.Over] += ArcArea.Triangle(-Far, piece.From, piece.To);
            if (piece.Over == 0 && (piece.To - piece.From).Length > 4.0 * Tolerance)
            {
                Border.Add(piece);
            }

            firstOfSide[piece.Side + 1] = Border.Count;
        }
    }

    /// <summary>A place near the given one that lies well off every side: sums about it lose digits at a side.</summary>
    private Vector3D ClearPlace(Vector3D place, double side)
    {
        var east = SkyDirection.FromVector(place).East;
        var north = place.Cross(east);
        var near = new List<int>();
        var (best, most) = (place, -1.0);
        for (var step = 0; step < 40; step++)
        {
            // Sunflower steps of a twentieth of a side: even, and none in line with another.
            var (sin, cos) = Math.SinCos(2.399963 * step);
            var away = 0.05 * Math.Min(side, 1.0) * Math.Sqrt(step);
            var at = (place + (east * (away * cos)) + (north * (away * sin))).Unit();
            Index.Near(at, side, near);
            var clear = 1.0;
            foreach (var panel in near)
            {
                for (var k = 0; k < Panels.Size(panel); k++)
                {
                    clear = Math.Min(
                        clear,
                        Math.Abs(Panels.Normals[Panels.First(panel) + k].Dot(at))
                    );
                }
            }

            if (clear > most)
            {
                (best, most) = (at, clear);
            }

            if (clear > 0.2 * Math.Min(side, 1.0))
            {
                break;
            }
        }

        return best;
    }
}
