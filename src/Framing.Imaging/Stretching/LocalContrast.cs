namespace Framing.Imaging;

/// <summary>Raises faint, wide structure against its surroundings, which is what nebulae are made of, and leaves stars as they are.</summary>
/// <remarks>
/// <para>
/// What is added is the difference of a fine mean (a two-hundredth of the picture's shorter side) and a wide one (an eighth).
/// Both are means of brightness cut off a little above the background, so that a star has no dark ring. The brighter a
/// pixel already is, the less it is changed.
/// </para>
/// <para>Common practice: a difference of two smoothed pictures (unsharp masking) at a large scale.</para>
/// </remarks>
public static class LocalContrast
{
    private const int FineParts = 200;
    private const int WideParts = 8;

    /// <summary>Brightness counts up to this many standard deviations above the background.</summary>
    private const float Most = 5f;

    /// <summary>Raises the contrast of brightness in place.</summary>
    /// <param name="brightness">Row after row, 0 (black) to 1 (white); NaN where there is none, which stays.</param>
    /// <param name="width">Columns.</param>
    /// <param name="height">Rows.</param>
    /// <param name="amount">How much: 0 for nothing, 1 for about twice the contrast of what is as wide as a tenth of the picture; at most 10.</param>
    /// <exception cref="ArgumentException">The numbers do not fit the size.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The amount is out of its range.</exception>
    public static void Raise(float[] brightness, int width, int height, float amount)
    {
        ArgumentNullException.ThrowIfNull(brightness);
        if (width < 1 || height < 1 || brightness.Length != (long)width * height)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"{brightness.Length} numbers were given for {width} x {height} pixels."
                ),
                nameof(brightness)
            );
        }

        if (!(amount is >= 0f and <= 10f))
        {
            throw new ArgumentOutOfRangeException(
                nameof(amount),
                amount,
                "Local contrast is raised by an amount of 0 to 10."
            );
        }

        if (amount == 0f || SampleStatistics.Of(brightness) is not { } found)
        {
            return;
        }

        var most = found.Median + (Most * Math.Max(found.Spread, 0.01f));
        var shorter = Math.Min(width, height);
        var fine = Cut(brightness, most);
        var wide = (float[])fine.Clone();
        SmoothMean.Apply(fine, width, height, Math.Max(1, shorter / FineParts));
        SmoothMean.Apply(wide, width, height, Math.Max(2, shorter / WideParts));
        Parallel.For(
            0,
            height,
            row =>
            {
                for (var i = row * width; i < (row + 1) * width; i++)
                {
                    var value = brightness[i];
                    var raised = value + (amount * (fine[i] - wide[i]) * (1f - value));
                    brightness[i] = float.IsNaN(value) ? value : Math.Clamp(raised, 0f, 1f);
                }
            }
        );
    }

    private static float[] Cut(float[] brightness, float most)
    {
        var cut = new float[brightness.Length];
        for (var i = 0; i < cut.Length; i++)
        {
            cut[i] = brightness[i] > most ? most : brightness[i];
        }

        return cut;
    }
}
