using Framing.Sky;

namespace Framing.Solving;

/// <summary>Finds quads of a frame in an index and has each find verified, until one is certain.</summary>
/// <param name="field">The stars of the frame.</param>
/// <param name="stars">The catalogue.</param>
/// <param name="verifier">Who decides.</param>
/// <param name="thoroughness">1 for a search of the whole sky; 2 where there are few guesses: more quads, larger tolerance.</param>
/// <param name="guesses">How many guesses there were before.</param>
internal sealed class QuadSearch(
    DetectionField field,
    ReferenceStars stars,
    Verifier verifier,
    int thoroughness,
    int guesses
)
{
    // Shorter quads say too little about the frame.
    private const double LeastPixels = 24.0;

    // Distortion and a tangent point elsewhere bend a quad by some thousandths of its size; a place is off by some
    // tenths of a pixel.
    private const double Bent = 0.0045;
    private const double PlacePixels = 1.0;
    private const double MostTolerance = 0.02;

    private readonly QuadSource source =
        thoroughness == 1 ? new(field, 50, 10) : new(field, 80, 14);
    private readonly List<uint> found = [];
    private readonly double[] x = new double[4];
    private readonly double[] y = new double[4];

    /// <summary>How many guesses were looked at.</summary>
    public int Guesses { get; private set; } = guesses;

    /// <summary>Looks for the frame among the quads of an index.</summary>
    /// <param name="index">The index.</param>
    /// <param name="numbers">Which star each star of the index is; null when they are the same.</param>
    /// <param name="token">Stops the search.</param>
    /// <returns>The frame's place; null if nothing is certain.</returns>
    public Finding? Search(QuadIndex index, int[]? numbers, CancellationToken token)
    {
        source.Restart();
        var quads = new List<int>();
        for (var star = 3; star < source.Stars; star++)
        {
            token.ThrowIfCancellationRequested();
            source.Quads(star, quads);
            for (var i = 0; i < quads.Count; i += 4)
            {
                var quad = (quads[i], quads[i + 1], quads[i + 2], quads[i + 3]);
                if (
                    (
                        Search(index, numbers, quad, mirrored: false)
                        ?? Search(index, numbers, quad, mirrored: true)
                    ) is
                    { } finding
                )
                {
                    return finding;
                }
            }
        }

        return null;
    }

    private Finding? Search(
        QuadIndex index,
        int[]? numbers,
        (int, int, int, int) quad,
        bool mirrored
    )
    {
        Span<int> members = [quad.Item1, quad.Item2, quad.Item3, quad.Item4];
        for (var i = 0; i < 4; i++)
        {
            x[i] = mirrored ? field.U[members[i]] : -field.U[members[i]];
            y[i] = field.V[members[i]];
        }

        var longest = 0.0;
        for (var a = 0; a < 3; a++)
        {
            for (var b = a + 1; b < 4; b++)
            {
                longest = Math.Max(longest, double.Hypot(x[b] - x[a], y[b] - y[a]));
            }
        }

        if (longest < LeastPixels)
        {
            return null;
        }

        var tolerance = Math.Min(thoroughness * (Bent + (PlacePixels / longest)), MostTolerance);
        for (var a = 0; a < 3; a++)
        {
            for (var b = a + 1; b < 4; b++)
            {
                // Nearly equal longest pairs: the catalogue may have taken the other.
                if (double.Hypot(x[b] - x[a], y[b] - y[a]) < longest * (1.0 - (2.0 * tolerance)))
                {
                    continue;
                }

                var c = Enumerable.Range(0, 4).First(i => i != a && i != b);
                var code = QuadCode.Of(x, y, a, b, c, 6 - a - b - c);
                if (Search(index, numbers, members, code, tolerance, mirrored) is { } finding)
                {
                    return finding;
                }
            }
        }

        return null;
    }

    /// <summary>One shape, and the ones that its order makes of it where a small error changes the order.</summary>
    private Finding? Search(
        QuadIndex index,
        int[]? numbers,
        ReadOnlySpan<int> members,
        in QuadCode code,
        double tolerance,
        bool mirrored
    )
    {
        var turns = Math.Abs(code.Cx + code.Dx - 1.0) < 2.0 * tolerance;
        for (var turn = 0; turn < (turns ? 2 : 1); turn++)
        {
            var turned = turn == 0 ? code : code.Turned();
            var swaps = Math.Abs(turned.Cx - turned.Dx) < 2.0 * tolerance;
            for (var swap = 0; swap < (swaps ? 2 : 1); swap++)
            {
                var shape = swap == 0 ? turned : turned.Swapped();
                found.Clear();
                index.Find(shape, tolerance, found);
                foreach (var quad in found)
                {
                    if (Try(index, numbers, members, shape, quad, mirrored) is { } finding)
                    {
                        return finding;
                    }
                }
            }
        }

        return null;
    }

    private Finding? Try(
        QuadIndex index,
        int[]? numbers,
        ReadOnlySpan<int> members,
        in QuadCode shape,
        uint quad,
        bool mirrored
    )
    {
        Span<int> four = stackalloc int[4];
        index.Stars(quad, four);
        Span<Vector3D> directions = stackalloc Vector3D[4];
        for (var i = 0; i < 4; i++)
        {
            directions[i] = stars.Vectors[numbers is null ? four[i] : numbers[four[i]]];
        }

        Span<int> seen = [members[shape.A], members[shape.B], members[shape.C], members[shape.D]];
        Guesses++;
        return verifier.Verify(directions, seen, mirrored, Guesses);
    }
}
