namespace Framing.Imaging;

/// <summary>Means over the surroundings of each pixel with bell-shaped weights: three running means along each axis.</summary>
/// <remarks>Pixels without a value (NaN) are left out and the others weigh more; what is beyond the edges likewise.</remarks>
internal static class SmoothMean
{
    private const int Passes = 3;

    /// <summary>Smooths in place.</summary>
    /// <param name="values">Row after row; NaN where there is none. A pixel with no value near gets the nearest thing to 0.</param>
    /// <param name="width">Columns.</param>
    /// <param name="height">Rows.</param>
    /// <param name="radius">Pixels on each side of a running mean, 1 or more; the bell's sigma is about as large.</param>
    public static void Apply(float[] values, int width, int height, int radius)
    {
        var weights = new float[values.Length];
        for (var i = 0; i < values.Length; i++)
        {
            var known = !float.IsNaN(values[i]);
            (values[i], weights[i]) = known ? (values[i], 1f) : (0f, 0f);
        }

        foreach (var plane in (float[][])[values, weights])
        {
            Parallel.For(0, height, row => Along(plane, row * width, 1, width, radius));
            Parallel.For(0, width, column => Along(plane, column, width, height, radius));
        }

        for (var i = 0; i < values.Length; i++)
        {
            values[i] /= Math.Max(weights[i], 1e-6f);
        }
    }

    /// <summary>Running means along a line, beyond whose ends there is nothing.</summary>
    private static void Along(float[] plane, int start, int step, int count, int radius)
    {
        var line = new float[count];
        var result = new float[count];
        for (var i = 0; i < count; i++)
        {
            line[i] = plane[start + (i * step)];
        }

        for (var pass = 0; pass < Passes; pass++)
        {
            var sum = 0.0;
            for (var i = 0; i < Math.Min(radius, count); i++)
            {
                sum += line[i];
            }

            for (var i = 0; i < count; i++)
            {
                sum += i + radius < count ? line[i + radius] : 0.0;
                result[i] = (float)(sum / ((2 * radius) + 1));
                sum -= i - radius >= 0 ? line[i - radius] : 0.0;
            }

            (line, result) = (result, line);
        }

        for (var i = 0; i < count; i++)
        {
            plane[start + (i * step)] = line[i];
        }
    }
}
