using System.Numerics;
using System.Runtime.CompilerServices;

namespace Framing.Imaging;

/// <summary>Finds the peaks of a plane after smoothing by the weights 1 4 6 4 1 along both axes: about the shape of a small star.</summary>
/// <remarks>Worked in bands of rows, each with a few rows of its own in memory. Undefined samples make no peak.</remarks>
internal static class PeakSearch
{
    /// <summary>The noise that is left of independent pixels.</summary>
    private const double NoiseLeft = 70.0 / 256.0;

    /// <summary>The noise that is left of pixels that were joined by 1 2 1 along both axes before.</summary>
    private const double JoinedNoiseLeft = 924.0 / 4096.0 / (6.0 / 16.0);

    private const int BandRows = 256;

    public static List<StarPeak> Find(
        float[] samples,
        int width,
        int height,
        BackgroundMesh mesh,
        double threshold,
        bool joined,
        CancellationToken cancel
    )
    {
        if (width < 8 || height < 8)
        {
            return [];
        }

        var times = threshold * (joined ? JoinedNoiseLeft : NoiseLeft);
        var bands = (height + BandRows - 1) / BandRows;
        var found = new List<StarPeak>[bands];
        Parallel.For(
            0,
            bands,
            new ParallelOptions { CancellationToken = cancel },
            band =>
                found[band] = FindInBand(
                    samples,
                    width,
                    height,
                    mesh,
                    times,
                    band * BandRows,
                    Math.Min(height, (band + 1) * BandRows)
                )
        );
        var all = new List<StarPeak>(found.Sum(list => list.Count));
        foreach (var list in found)
        {
            all.AddRange(list);
        }

        return all;
    }

    private static List<StarPeak> FindInBand(
        float[] samples,
        int width,
        int height,
        BackgroundMesh mesh,
        double times,
        int from,
        int to
    )
    {
        var found = new List<StarPeak>();
        var limits = new float[width];
        var level = new float[width];
        var (before, here, after) = (new float[width], new float[width], new float[width]);
        var column = new float[width + 4];
        Smooth(samples, width, height, from - 1, column, before);
        Smooth(samples, width, height, from, column, here);
        for (var y = from; y < to; y++)
        {
            Smooth(samples, width, height, y + 1, column, after);
            if (y > 0 && y < height - 1)
            {
                mesh.FillRow(y, times, limits);
                Scan(before, here, after, limits, y, found);
            }

            (before, here, after) = (here, after, before);
        }

        for (var i = 0; i < found.Count; i++)
        {
            var peak = found[i];
            found[i] = peak with { Excess = peak.Excess - (float)mesh.At(peak.X, peak.Y).Level };
        }

        return found;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Smooth(
        float[] samples,
        int width,
        int height,
        int y,
        float[] column,
        float[] result
    )
    {
        var last = height - 1;
        var a = samples.AsSpan(Math.Clamp(y - 2, 0, last) * width, width);
        var b = samples.AsSpan(Math.Clamp(y - 1, 0, last) * width, width);
        var c = samples.AsSpan(Math.Clamp(y, 0, last) * width, width);
        var d = samples.AsSpan(Math.Clamp(y + 1, 0, last) * width, width);
        var e = samples.AsSpan(Math.Clamp(y + 2, 0, last) * width, width);
        var inner = column.AsSpan(2, width);
        var count = Vector<float>.Count;
        var x = 0;
        for (; x <= width - count; x += count)
        {
            var sum =
                new Vector<float>(a[x..])
                + new Vector<float>(e[x..])
                + (4f * (new Vector<float>(b[x..]) + new Vector<float>(d[x..])))
                + (6f * new Vector<float>(c[x..]));
            sum.CopyTo(inner[x..]);
        }

        for (; x < width; x++)
        {
            inner[x] = a[x] + e[x] + (4f * (b[x] + d[x])) + (6f * c[x]);
        }

        column[0] = column[1] = column[2];
        column[width + 2] = column[width + 3] = column[width + 1];
        for (x = 0; x <= width - count; x += count)
        {
            var sum =
                new Vector<float>(column, x)
                + new Vector<float>(column, x + 4)
                + (4f * (new Vector<float>(column, x + 1) + new Vector<float>(column, x + 3)))
                + (6f * new Vector<float>(column, x + 2));
            (sum * (1f / 256f)).CopyTo(result, x);
        }

        for (; x < width; x++)
        {
            result[x] =
                (
                    column[x]
                    + column[x + 4]
                    + (4f * (column[x + 1] + column[x + 3]))
                    + (6f * column[x + 2])
                ) / 256f;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Scan(
        float[] before,
        float[] here,
        float[] after,
        float[] limits,
        int y,
        List<StarPeak> found
    )
    {
        var count = Vector<float>.Count;
        var x = 1;
        for (; x <= here.Length - 1 - count; x += count)
        {
            if (Vector.GreaterThanAny(new Vector<float>(here, x), new Vector<float>(limits, x)))
            {
                ScanPart(before, here, after, limits, x, x + count, y, found);
            }
        }

        ScanPart(before, here, after, limits, x, here.Length - 1, y, found);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void ScanPart(
        float[] before,
        float[] here,
        float[] after,
        float[] limits,
        int from,
        int to,
        int y,
        List<StarPeak> found
    )
    {
        for (var x = from; x < to; x++)
        {
            var value = here[x];

            // Of equal neighbours the first one counts, so that a flat top gives one peak.
            if (
                value > limits[x]
                && value > here[x - 1]
                && value >= here[x + 1]
                && value > before[x - 1]
                && value > before[x]
                && value > before[x + 1]
                && value >= after[x - 1]
                && value >= after[x]
                && value >= after[x + 1]
            )
            {
                found.Add(new(x, y, value));
            }
        }
    }
}
