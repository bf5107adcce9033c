using System.Runtime.CompilerServices;

namespace Framing.Solving;

/// <summary>The quads of a frame, those of its brightest stars first: each star with threes of its neighbours.</summary>
internal sealed class QuadSource
{
    private readonly DetectionField field;
    private readonly int neighbours;
    private readonly int[] near;
    private readonly double[] distances;
    private readonly HashSet<ulong> seen = [];

    /// <summary>Takes the stars of a frame.</summary>
    /// <param name="field">The stars of the frame.</param>
    /// <param name="mostStars">How many of the brightest take a turn.</param>
    /// <param name="neighbours">With how many of its neighbours each does.</param>
    public QuadSource(DetectionField field, int mostStars, int neighbours)
    {
        this.field = field;
        this.neighbours = neighbours;
        near = new int[neighbours];
        distances = new double[neighbours];
        Stars = Math.Min(field.Count, mostStars);
    }

    /// <summary>How many stars take a turn.</summary>
    public int Stars { get; }

    /// <summary>Forgets which quads were given.</summary>
    public void Restart() => seen.Clear();

    /// <summary>The new quads of a star with its neighbours, four star numbers each.</summary>
    /// <param name="star">The star, counted by brightness.</param>
    /// <param name="quads">Where they go.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Quads(int star, List<int> quads)
    {
        quads.Clear();

        // A catalogue's brightness is not a frame's: colour, filter and noise shuffle the order, so that stars that come
        // somewhat later count too.
        var count = Nearest(star, Math.Min(field.Count, (int)(1.8 * star) + 8));
        for (var a = 0; a < count; a++)
        {
            for (var b = a + 1; b < count; b++)
            {
                for (var c = b + 1; c < count; c++)
                {
                    if (seen.Add(Key(star, near[a], near[b], near[c])))
                    {
                        quads.Add(star);
                        quads.Add(near[a]);
                        quads.Add(near[b]);
                        quads.Add(near[c]);
                    }
                }
            }
        }
    }

    private static ulong Key(int a, int b, int c, int d)
    {
        Span<int> four = [a, b, c, d];
        four.Sort();
        return (uint)four[0]
            | ((ulong)(uint)four[1] << 16)
            | ((ulong)(uint)four[2] << 32)
            | ((ulong)(uint)four[3] << 48);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private int Nearest(int star, int among)
    {
        var count = 0;
        for (var other = 0; other < among; other++)
        {
            if (other == star)
            {
                continue;
            }

            double du = field.U[other] - field.U[star],
                dv = field.V[other] - field.V[star];
            var distance = (du * du) + (dv * dv);
            var place = Math.Min(count, neighbours - 1);
            if (count == neighbours && distance >= distances[place])
            {
                continue;
            }

            while (place > 0 && distances[place - 1] > distance)
            {
                distances[place] = distances[place - 1];
                near[place] = near[place - 1];
                place--;
            }

            distances[place] = distance;
            near[place] = other;
            count = Math.Min(count + 1, neighbours);
        }

        return count;
    }
}
