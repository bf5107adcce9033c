namespace Framing.Imaging;

/// <summary>What a few thousand blocks of 2 x 2 pixels tell: whether colours alternate, and whether there is a black border.</summary>
/// <param name="IsVisible">True when the four pixels of a block differ by more than noise does.</param>
/// <param name="Ratio">The background of each of the four over their mean.</param>
/// <param name="HasBorder">True when a good part of the samples is exactly 0 and the rest is far from it.</param>
internal readonly record struct ColourPattern(bool IsVisible, float[] Ratio, bool HasBorder)
{
    private const int MostBlocks = 20_000;

    public static ColourPattern Of(int width, int height, float[] samples)
    {
        if (width < 2 || height < 2)
        {
            return new(false, [1f, 1f, 1f, 1f], false);
        }

        var phases = new List<float>[] { [], [], [], [] };
        var differences = new List<float>[] { [], [], [] };
        var noise = new List<float>();
        var (zeros, seen) = (0, 0);
        long blocks = (long)(width / 2) * (height / 2);
        var step = Math.Max(1, blocks / MostBlocks) | 1;
        for (long block = 0; block < blocks; block += step)
        {
            var x = (int)(block % (width / 2)) * 2;
            var y = (int)(block / (width / 2)) * 2;
            var at = (y * width) + x;
            var first = samples[at];
            ReadOnlySpan<float> four =
            [
                first,
                samples[at + 1],
                samples[at + width],
                samples[at + width + 1],
            ];
            seen++;
            if (first == 0f && four[1] == 0f && four[2] == 0f && four[3] == 0f)
            {
                zeros++;
                continue;
            }

            if (!float.IsFinite(four[0] + four[1] + four[2] + four[3]))
            {
                continue;
            }

            for (var phase = 0; phase < 4; phase++)
            {
                phases[phase].Add(four[phase]);
                if (phase > 0)
                {
                    differences[phase - 1].Add(four[phase] - first);
                }
            }

            if (x + 3 < width && float.IsFinite(samples[at + 2]))
            {
                noise.Add(samples[at + 2] - first);
            }
        }

        if (phases[0].Count < 100 || noise.Count < 100)
        {
            return new(false, [1f, 1f, 1f, 1f], false);
        }

        // Differences inside a block do not know of gradients; the same colour two columns on gives the noise.
        var (_, sigma) = Clipped(noise);
        var largest = differences.Max(values => Math.Abs(Clipped(values).Mean));
        var means = Array.ConvertAll(phases, values => (float)Median(values));
        var all = means.Average();
        phases[0].Sort();
        var low = phases[0][phases[0].Count / 20];
        var border = zeros > 0.005 * seen && low > 0.3 * Math.Max(means[0], 0f) && low > 0f;
        return new(
            largest > 0.25 * sigma / Math.Sqrt(2.0) && largest > 0.05,
            all > 0f ? Array.ConvertAll(means, mean => mean / all) : [1f, 1f, 1f, 1f],
            border
        );
    }

    private static double Median(List<float> values)
    {
        values.Sort();
        return values[values.Count / 2];
    }

    /// <summary>Mean and standard deviation of the values within 3 sigma of the median, sigma from the quartiles at first.</summary>
    private static (double Mean, double Sigma) Clipped(List<float> values)
    {
        var middle = Median(values);
        var sigma = Math.Max(
            (values[values.Count * 3 / 4] - values[values.Count / 4]) / 1.349,
            1e-6 * Math.Abs(middle)
        );
        var reach = Math.Max(3.0 * sigma, 1.5);
        double sum = 0.0,
            squares = 0.0;
        var count = 0;
        foreach (var value in values)
        {
            var from = value - middle;
            if (Math.Abs(from) <= reach)
            {
                sum += from;
                squares += from * from;
                count++;
            }
        }

        var mean = sum / count;
        return (middle + mean, Math.Sqrt(Math.Max(0.0, (squares / count) - (mean * mean))));
    }
}
