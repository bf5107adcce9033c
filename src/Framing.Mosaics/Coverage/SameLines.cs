namespace Framing.Mosaics;

/// <summary>Sides of different figures that lie on one great circle, as in panels laid edge to edge or upon each other.</summary>
/// <remarks>
/// Rounding would tear such sides apart or weave them together. Those within the tolerance of each other bear one number
/// instead, and <see cref="ArcSweep"/> decides between them by a rule.
/// </remarks>
internal sealed class SameLines
{
    private readonly int[]? lines;

    private SameLines(int[]? lines) => this.lines = lines;

    /// <summary>Finds them.</summary>
    /// <param name="figures">The figures.</param>
    /// <param name="near">For each figure those near it.</param>
    /// <param name="tolerance">How far apart two sides of one line may lie.</param>
    public static SameLines Of(ConvexFigures figures, NearLists near, double tolerance)
    {
        int[]? found = null;
        var corners = figures.Corners;
        var normals = figures.Normals;
        var next = figures.Next;
        for (var i = 0; i < figures.Count; i++)
        {
            var (first, last) = (figures.First(i), figures.First(i) + figures.Size(i));
            foreach (var j in near.Of(i))
            {
                if (j <= i)
                {
                    continue;
                }

                var (from, to) = (figures.First(j), figures.First(j) + figures.Size(j));
                for (var e = first; e < last; e++)
                {
                    for (var s = from; s < to; s++)
                    {
                        // Two of four first: most sides fail here.
                        if (
                            Math.Abs(normals[s].Dot(corners[e])) <= tolerance
                            && Math.Abs(normals[s].Dot(corners[next[e]])) <= tolerance
                            && Math.Abs(normals[e].Dot(corners[s])) <= 4.0 * tolerance
                            && Math.Abs(normals[e].Dot(corners[next[s]])) <= 4.0 * tolerance
                        )
                        {
                            Join(found ??= Alone(figures.Sides), e, s);
                        }
                    }
                }
            }
        }

        for (var e = 0; found is not null && e < found.Length; e++)
        {
            found[e] = Root(found, e);
        }

        return new(found);
    }

    /// <summary>True when two sides lie on one line.</summary>
    public bool Same(int side, int other) => lines is not null && lines[side] == lines[other];

    private static int[] Alone(int count) => [.. Enumerable.Range(0, count)];

    private static void Join(int[] parents, int e, int s)
    {
        int a = Root(parents, e),
            b = Root(parents, s);
        parents[Math.Max(a, b)] = Math.Min(a, b);
    }

    private static int Root(int[] parents, int side)
    {
        while (parents[side] != side)
        {
            parents[side] = parents[parents[side]];
            side = parents[side];
        }

        return side;
    }
}
