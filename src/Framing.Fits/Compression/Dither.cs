namespace Framing.Fits;

/// <summary>The noise of the standard: 10,000 numbers between 0 and 1, the same everywhere.</summary>
/// <remarks>Source: FITS Standard 4.0, section 10.2 and appendix I.</remarks>
internal static class Dither
{
    /// <summary>How many numbers there are.</summary>
    public const int Count = 10_000;

    /// <summary>The number that stands for an exact zero.</summary>
    public const int ZeroMark = -2147483646;

    private static readonly float[] Numbers = Make();

    /// <summary>Scales the samples of a tile.</summary>
    /// <param name="samples">The whole numbers.</param>
    /// <param name="scaling">The tile's scale and zero, and the number that means "undefined".</param>
    /// <param name="kind">The kind of noise.</param>
    /// <param name="seed">ZDITHER0 plus the number of the tile from 0, less 1.</param>
    /// <param name="values">Takes the values; NaN where a sample is not defined.</param>
    public static void Restore(
        ReadOnlySpan<int> samples,
        (double Scale, double Zero, int? Blank) scaling,
        DitherKind kind,
        long seed,
        Span<double> values
    )
    {
        var start = (int)(((seed % Count) + Count) % Count);
        var next = (int)(Numbers[start] * 500f);
        for (var i = 0; i < samples.Length; i++)
        {
            var sample = samples[i];
            if (sample == scaling.Blank)
            {
                values[i] = double.NaN;
            }
            else if (kind == DitherKind.None)
            {
                values[i] = (sample * scaling.Scale) + scaling.Zero;
            }
            else if (kind == DitherKind.SubtractiveWithZeros && sample == ZeroMark)
            {
                values[i] = 0.0;
            }
            else
            {
                values[i] = ((sample - (double)Numbers[next] + 0.5) * scaling.Scale) + scaling.Zero;
            }

            if (++next == Count)
            {
                start = (start + 1) % Count;
                next = (int)(Numbers[start] * 500f);
            }
        }
    }

    private static float[] Make()
    {
        // Park and Miller's generator; a long holds every product.
        const long factor = 16807;
        const long modulus = 2147483647;
        var numbers = new float[Count];
        long seed = 1;
        for (var i = 0; i < numbers.Length; i++)
        {
            seed = factor * seed % modulus;
            numbers[i] = (float)(seed / (double)modulus);
        }

        return numbers;
    }
}
