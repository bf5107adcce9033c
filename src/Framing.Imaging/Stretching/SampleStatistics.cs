namespace Framing.Imaging;

/// <summary>Robust statistics of a picture's samples: where its background lies, how wide that is, where the bright end is.</summary>
/// <param name="Least">The least finite sample.</param>
/// <param name="Median">The median: the sky background, unless more than half of the picture is bright.</param>
/// <param name="Spread">
/// 1.4826 times the median of the distances from the median: the standard deviation where samples are normally
/// distributed, hardly moved by stars.
/// </param>
/// <param name="Bright">The sample below which 99.95 % of all lie.</param>
/// <param name="Greatest">The greatest finite sample.</param>
/// <remarks>
/// Source: Rousseeuw and Croux 1993, J. Am. Stat. Assoc. 88, 1273, for the factor 1.4826. Taken from at most about 400,000
/// samples spread evenly over the picture.
/// </remarks>
public readonly record struct SampleStatistics(
    float Least,
    float Median,
    float Spread,
    float Bright,
    float Greatest
)
{
    private const int MostSamples = 400_000;

    /// <summary>Takes the statistics of a plane, or of several planes thrown together.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="firstPlane">The first plane.</param>
    /// <param name="planes">How many.</param>
    /// <returns>The statistics; null when there is no finite sample.</returns>
    public static SampleStatistics? Of(Picture picture, int firstPlane, int planes)
    {
        ArgumentNullException.ThrowIfNull(picture);
        var samples = new List<float>(MostSamples * 2);
        var total = (long)picture.Width * picture.Height * planes;
        var step = (int)Math.Max(1, total / MostSamples);

        // A step that shares no factor with the width visits every column in turn.
        while (step > 1 && GreatestCommonDivisor(step, picture.Width) > 1)
        {
            step++;
        }

        for (var plane = firstPlane; plane < firstPlane + planes; plane++)
        {
            var values = picture.Plane(plane);
            for (var i = 0; i < values.Length; i += step)
            {
                if (float.IsFinite(values[i]))
                {
                    samples.Add(values[i]);
                }
            }
        }

        return Of(samples);
    }

    /// <summary>Takes the statistics of numbers as they stand.</summary>
    /// <param name="values">The numbers; those that are not finite do not count.</param>
    /// <returns>The statistics; null when there is no finite one.</returns>
    internal static SampleStatistics? Of(ReadOnlySpan<float> values)
    {
        var step = values.Length <= MostSamples ? 1 : (values.Length / MostSamples) | 1;
        var samples = new List<float>((values.Length / step) + 1);
        for (var i = 0; i < values.Length; i += step)
        {
            if (float.IsFinite(values[i]))
            {
                samples.Add(values[i]);
            }
        }

        return Of(samples);
    }

    private static SampleStatistics? Of(List<float> samples)
    {
        if (samples.Count == 0)
        {
            return null;
        }

        samples.Sort();
        var median = samples[samples.Count / 2];
        var bright = samples[(int)((samples.Count - 1) * 0.9995)];
        var (least, greatest) = (samples[0], samples[^1]);
        for (var i = 0; i < samples.Count; i++)
        {
            samples[i] = Math.Abs(samples[i] - median);
        }

        samples.Sort();
        return new(least, median, 1.4826f * samples[samples.Count / 2], bright, greatest);
    }

    private static int GreatestCommonDivisor(int a, int b) =>
        b == 0 ? a : GreatestCommonDivisor(b, a % b);
}
