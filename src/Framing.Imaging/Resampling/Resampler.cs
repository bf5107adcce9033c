using Framing.Sky;

namespace Framing.Imaging;

/// <summary>Draws a picture onto the pixels of a chart.</summary>
public static class Resampler
{
    /// <summary>Draws a picture onto a chart.</summary>
    /// <param name="picture">The picture; it must have coordinates.</param>
    /// <param name="chart">
    /// The chart's coordinates. Row r, column c of the result is the chart's pixel (c + 1, r + 1): for a chart whose row 0 is
    /// on top, coordinates whose y grows downwards.
    /// </param>
    /// <param name="width">Columns of the chart, 1 or more.</param>
    /// <param name="height">Rows of the chart, 1 or more.</param>
    /// <param name="interpolation">How values between samples are found.</param>
    /// <param name="threads">The most threads to use; 0 for as many as there are processors.</param>
    /// <param name="cancel">Stops the work between tiles.</param>
    /// <returns>The picture on the chart.</returns>
    /// <exception cref="ArgumentException">The picture has no coordinates.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    /// <remarks>
    /// <para>
    /// Each place is good to 0.01 pixel of the picture, whatever the projections: the map is worked out at places of a grid,
    /// with a bound for what lies between them, and the grid is refined where the bound is not met.
    /// </para>
    /// <para>
    /// Samples that are not defined are left out and the others weigh more. Where the chart's pixels are twice the picture's
    /// or larger, the picture is first averaged down, so that fine things do not flicker; not for nearest samples.
    /// </para>
    /// </remarks>
    public static ResampledPicture Resample(
        Picture picture,
        WorldCoordinates chart,
        int width,
        int height,
        Interpolation interpolation = Interpolation.Bilinear,
        int threads = 0,
        CancellationToken cancel = default
    )
    {
        ArgumentNullException.ThrowIfNull(picture);
        ArgumentNullException.ThrowIfNull(chart);
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(height, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(threads);
        if (picture.Coordinates is null)
        {
            throw new ArgumentException("The picture has no place on the sky.", nameof(picture));
        }

        var sampler = PlaneSampler.Of(interpolation);
        var reduced =
            interpolation == Interpolation.Nearest
                ? picture
                : picture.Reduced(Reduction(picture, chart));
        var world = reduced.Coordinates!;
        var map = new ChartMap(chart, world, PictureCap.Of(world, reduced.Width, reduced.Height));
        var planes = new float[reduced.Planes][];
        for (var plane = 0; plane < planes.Length; plane++)
        {
            planes[plane] = GC.AllocateUninitializedArray<float>(checked(width * height));
        }

        const int tile = GridDrawing.Tile;
        var drawing = new GridDrawing(reduced, map, sampler, planes, width, height);
        var across = (width + tile - 1) / tile;
        Parallel.For(
            0,
            across * ((height + tile - 1) / tile),
            new ParallelOptions
            {
                CancellationToken = cancel,
                MaxDegreeOfParallelism = threads == 0 ? -1 : threads,
            },
            i => drawing.Draw(i % across * tile, i / across * tile)
        );
        return new(width, height, planes);
    }

    private static int Reduction(Picture picture, WorldCoordinates chart)
    {
        var ratio = chart.Matrix.Scale / picture.Coordinates!.Matrix.Scale;

        // A ratio that is whole but for rounding counts as whole.
        return (int)Math.Clamp(ratio + 1e-6, 1.0, Math.Min(picture.Width, picture.Height));
    }
}
