namespace Framing.Imaging;

/// <summary>Averages square blocks of pixels into one, row by row, so that a large file never has to be in memory whole.</summary>
/// <remarks>NaN samples are left out of their block's mean; a block of nothing else is NaN.</remarks>
internal sealed class BlockAverage
{
    private readonly int sourceWidth;
    private readonly int factor;

    public BlockAverage(int sourceWidth, int sourceHeight, int factor)
    {
        this.sourceWidth = sourceWidth;
        this.factor = factor;
        Width = sourceWidth / factor;
        Height = sourceHeight / factor;
    }

    public int Width { get; }

    public int Height { get; }

    /// <summary>The least factor with which a picture holds at most a number of pixels.</summary>
    public static int FactorFor(int width, int height, long mostPixels)
    {
        var found = Math.Max(1, (int)Math.Sqrt((double)width * height / mostPixels));
        while (
            (long)(width / found) * (height / found) > mostPixels && found < Math.Min(width, height)
        )
        {
            found++;
        }

        return Math.Min(found, Math.Min(width, height));
    }

    /// <summary>Averages as many source rows as a block is high into one row.</summary>
    public void Average(ReadOnlySpan<float> rows, Span<float> result)
    {
        if (factor == 1)
        {
            rows[..Width].CopyTo(result);
            return;
        }

        for (var column = 0; column < result.Length; column++)
        {
            var sum = 0.0;
            var count = 0;
            for (var y = 0; y < factor; y++)
            {
                foreach (var sample in rows.Slice((y * sourceWidth) + (column * factor), factor))
                {
                    if (!float.IsNaN(sample))
                    {
                        sum += sample;
                        count++;
                    }
                }
            }

            result[column] = count == 0 ? float.NaN : (float)(sum / count);
        }
    }
}
