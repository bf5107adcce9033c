using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Cuts the sides of figures where they enter and leave other figures; one for each thread.</summary>
/// <remarks>
/// <para>
/// Along a chord, the distance from another figure's side changes evenly, and a great-circle arc is seen under its chord:
/// where they cross follows from the distances at both ends, as between straight lines of a plane.
/// </para>
/// <para>
/// Sides of one line (<see cref="SameLines"/>): figures that lie on either side of it touch and leave nothing open, so each
/// covers the other's side. Of figures on the same side of it, the one with the lower number counts as the larger.
/// </para>
/// <para>
/// A crossing is computed from the side with the lower number, whichever figure asks, so that the pieces that meet there
/// share it to the last bit.
/// </para>
/// </remarks>
internal sealed class ArcSweep
{
    private readonly ConvexFigures figures;
    private readonly NearLists near;
    private readonly SameLines lines;
    private readonly int firstOfSecond;
    private readonly double tolerance;
    private readonly List<ArcPiece> pieces = [];
    private List<Crossing>[] crossings = [];
    private (int First, int Second)[] atStart = [];
    private double[] distances = [];

    /// <summary>Prepares to cut.</summary>
    /// <param name="figures">The figures.</param>
    /// <param name="near">For each figure those near it.</param>
    /// <param name="lines">Sides that lie on one line.</param>
    /// <param name="firstOfSecond">The number from which on figures are of the second kind.</param>
    /// <param name="tolerance">How far apart two sides of one line may lie.</param>
    public ArcSweep(
        ConvexFigures figures,
        NearLists near,
        SameLines lines,
        int firstOfSecond,
        double tolerance
    )
    {
        this.figures = figures;
        this.near = near;
        this.lines = lines;
        this.firstOfSecond = firstOfSecond;
        this.tolerance = tolerance;
    }

    /// <summary>The pieces of a figure's sides, in order; good until the next call.</summary>
    public List<ArcPiece> Of(int figure)
    {
        pieces.Clear();
        var size = figures.Size(figure);
        while (crossings.Length < size)
        {
            crossings = [.. crossings, []];
            atStart = new (int, int)[crossings.Length];
        }

        for (var k = 0; k < size; k++)
        {
            crossings[k].Clear();
            atStart[k] = default;
        }

        foreach (var other in near.Of(figure))
        {
            Cover(figure, size, other);
        }

        for (var k = 0; k < size; k++)
        {
            Cut(figures.First(figure) + k, crossings[k], atStart[k]);
        }

        return pieces;
    }

    /// <summary>Finds what another figure covers of each side.</summary>
    private void Cover(int figure, int size, int other)
    {
        var (first, from, sides) = (
            figures.First(figure),
            figures.First(other),
            figures.Size(other)
        );
        if (distances.Length < size * sides)
        {
            distances = new double[size * sides];
        }

        var corners = figures.Corners;
        var normals = figures.Normals;
        for (var s = 0; s < sides; s++)
        {
            var normal = normals[from + s];
            var outside = true;
            for (var k = 0; k < size; k++)
            {
                var distance = normal.Dot(corners[first + k]);
                distances[(k * sides) + s] = distance;
                outside &= distance < -tolerance;
            }

            if (outside)
            {
                return;
            }
        }

        for (var k = 0; k < size; k++)
        {
            var here = distances.AsSpan(k * sides, sides);
            var there = distances.AsSpan((k + 1) % size * sides, sides);
            CoverSide(figure, first, k, other, here, there);
        }
    }

    private void CoverSide(
        int figure,
        int first,
        int k,
        int other,
        ReadOnlySpan<double> here,
        ReadOnlySpan<double> there
    )
    {
        var from = figures.First(other);
        var span = new ArcSpan();
        for (var s = 0; s < here.Length; s++)
        {
            if (lines.Same(first + k, from + s))
            {
                if (
                    other > figure
                    && figures.Normals[first + k].Dot(figures.Normals[from + s]) > 0.0
                )
                {
                    return;
                }

                continue;
            }

            if (!span.Narrow(here[s], there[s], from + s))
            {
                return;
            }
        }

        if (span.IsEmpty)
        {
            return;
        }

        var second = other >= firstOfSecond;
        if (span.LowSide < 0)
        {
            atStart[k] = second
                ? (atStart[k].First, atStart[k].Second + 1)
                : (atStart[k].First + 1, atStart[k].Second);
        }
        else
        {
            crossings[k].Add(new(span.Low, span.LowSide, 1, second));
        }

        if (span.HighSide >= 0)
        {
            crossings[k].Add(new(span.High, span.HighSide, -1, second));
        }
    }

    private void Cut(int side, List<Crossing> cuts, (int First, int Second) over)
    {
        cuts.Sort(static (a, b) => a.At.CompareTo(b.At));
        var (at, from) = (0.0, figures.Corners[side]);
        foreach (var cut in cuts)
        {
            if (cut.At > at)
            {
                var place = Place(side, cut.Side, cut.At);
                pieces.Add(new(side, from, place, over.First, over.Second));
                (at, from) = (cut.At, place);
            }

            over = cut.Second
                ? (over.First, over.Second + cut.Step)
                : (over.First + cut.Step, over.Second);
        }

        pieces.Add(new(side, from, figures.Corners[figures.Next[side]], over.First, over.Second));
    }

    /// <summary>Where two sides cross, the same from either.</summary>
    private Vector3D Place(int side, int other, double at)
    {
        var (low, high) = side < other ? (side, other) : (other, side);
        var (a, b) = (figures.Corners[low], figures.Corners[figures.Next[low]]);
        double fa = figures.Normals[high].Dot(a),
            fb = figures.Normals[high].Dot(b);
        if (Math.Abs(fb - fa) < 1e-15)
        {
            // As good as parallel: no matter where.
            (a, b) = (figures.Corners[side], figures.Corners[figures.Next[side]]);
            return ((a * (1.0 - at)) + (b * at)).Unit();
        }

        return (((a * fb) - (b * fa)) * (1.0 / (fb - fa))).Unit();
    }

    /// <summary>Where along a side, 0 to 1, another figure begins to cover it (step 1) or ceases to (-1), at which of its sides.</summary>
    private readonly record struct Crossing(double At, int Side, int Step, bool Second);
}
