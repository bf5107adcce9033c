using System.Runtime.CompilerServices;

namespace Framing.Solving;

/// <summary>Makes the quads of one star after the other.</summary>
internal sealed class QuadMaker(ReferenceStars stars, QuadLevel level)
{
    // Expected brighter stars within the first reach, so that nearly always enough are there.
    private const double Wanted = 2.6;
    private const double LargestReach = 1.0;

    // Neighbours nearer than this share of the reach give shapes of no use, and are one blur in most frames.
    private const double LeastShare = 0.04;

    private readonly StarBuffer found = new();
    private readonly double[] distances = new double[level.Neighbours];
    private readonly double[] x = new double[level.Neighbours];
    private readonly double[] y = new double[level.Neighbours];

    /// <summary>Makes the quads of a star with its nearest brighter neighbours.</summary>
    /// <param name="star">The star.</param>
    /// <param name="neighbours">Where its neighbours go, nearest first.</param>
    /// <param name="codes">Where the shapes go.</param>
    /// <returns>How many quads were made: none if too few brighter stars are near.</returns>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public int Make(int star, Span<int> neighbours, Span<ulong> codes)
    {
        if (star < level.Neighbours)
        {
            return 0;
        }

        var grid = stars.Levels.OfBrightest(star);
        var frame = new StarFrame(stars, star);
        var reach = Math.Sqrt(
            stars.Levels.Steradians * Wanted * level.Neighbours / (Math.PI * star)
        );
        while (true)
        {
            reach = Math.Min(reach, LargestReach);
            if (Nearest(star, grid, frame, reach, neighbours) == level.Neighbours)
            {
                break;
            }

            if (reach >= LargestReach)
            {
                return 0;
            }

            reach *= 1.6;
        }

        return Codes(codes);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private int Nearest(
        int star,
        SkyGrid grid,
        in StarFrame frame,
        double reach,
        Span<int> neighbours
    )
    {
        found.Clear();
        grid.Gather(stars.RightAscension[star], stars.Declination[star], reach, found);
        var centre = stars.Vectors[star];
        var count = 0;
        var limit = reach * reach;
        var least = limit * LeastShare * LeastShare;
        foreach (var other in found.Items)
        {
            if (other >= star)
            {
                continue;
            }

            var difference = stars.Vectors[other] - centre;
            var distance = difference.Dot(difference);
            if (distance > limit || distance < least)
            {
                continue;
            }

            var place = Math.Min(count, level.Neighbours - 1);
            if (count == level.Neighbours && distance >= distances[place])
            {
                continue;
            }

            while (place > 0 && distances[place - 1] > distance)
            {
                distances[place] = distances[place - 1];
                neighbours[place] = neighbours[place - 1];
                place--;
            }

            distances[place] = distance;
            neighbours[place] = other;
            count = Math.Min(count + 1, level.Neighbours);
        }

        for (var i = 0; i < count; i++)
        {
            (x[i], y[i]) = frame.Project(stars.Vectors[neighbours[i]]);
        }

        return count;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private int Codes(Span<ulong> codes)
    {
        Span<double> quadX = stackalloc double[4];
        Span<double> quadY = stackalloc double[4];
        for (var i = 0; i < codes.Length; i++)
        {
            for (var j = 0; j < 3; j++)
            {
                var neighbour = level.Triples[(3 * i) + j];
                quadX[j + 1] = x[neighbour];
                quadY[j + 1] = y[neighbour];
            }

            codes[i] = QuadIndex.Pack(QuadCode.Of(quadX, quadY));
        }

        return codes.Length;
    }
}
