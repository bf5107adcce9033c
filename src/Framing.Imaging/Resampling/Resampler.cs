using System.Buffers;
using Framing.Sky;

namespace Framing.Imaging;

/// <summary>Draws a picture onto the pixels of a chart.</summary>
public static class Resampler
{
    private const int BandRows = 32;

    /// <summary>Draws a picture onto a chart.</summary>
    /// <param name="picture">The picture; it must have coordinates.</param>
    /// <param name="chart">
    /// The chart's coordinates. Row r, column c of the result is the chart's pixel (c + 1, r + 1): for a chart whose row 0 is
    /// on top, coordinates whose y grows downwards.
    /// </param>
    /// <param name="width">Columns of the chart, 1 or more.</param>
    /// <param name="height">Rows of the chart, 1 or more.</param>
    /// <param name="cancel">Stops the work between bands of rows.</param>
    /// <returns>The picture on the chart.</returns>
    /// <exception cref="ArgumentException">The picture has no coordinates.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    /// <remarks>
    /// Bilinear between the middles of pixels; samples that are not defined are left out and the others weigh more. Where
    /// the chart's pixels are twice the picture's or larger, the picture is first averaged down, so that fine things do not
    /// flicker.
    /// </remarks>
    public static ResampledPicture Resample(
        Picture picture,
        WorldCoordinates chart,
        int width,
        int height,
        CancellationToken cancel = default
    )
    {
        ArgumentNullException.ThrowIfNull(picture);
        ArgumentNullException.ThrowIfNull(chart);
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(height, 1);
        if (picture.Coordinates is null)
        {
            throw new ArgumentException("The picture has no place on the sky.", nameof(picture));
        }

        var reduced = picture.Reduced(Reduction(picture, chart));
        var map = PixelMap.Between(chart, reduced.Coordinates!);
        var planes = new float[reduced.Planes][];
        for (var plane = 0; plane < planes.Length; plane++)
        {
            planes[plane] = new float[checked(width * height)];
        }

        var covered = new bool[width * height];
        Parallel.For(
            0,
            (height + BandRows - 1) / BandRows,
            new ParallelOptions { CancellationToken = cancel },
            band =>
            {
                for (
                    var row = band * BandRows;
                    row < Math.Min(height, (band + 1) * BandRows);
                    row++
                )
                {
                    DrawRow(reduced, map, row, planes, covered.AsSpan(row * width, width));
                }
            }
        );
        return new(width, height, planes, covered);
    }

    private static int Reduction(Picture picture, WorldCoordinates chart)
    {
        var ratio = chart.Matrix.Scale / picture.Coordinates!.Matrix.Scale;

        // A ratio that is whole but for rounding counts as whole.
        return (int)Math.Clamp(ratio + 1e-6, 1.0, Math.Min(picture.Width, picture.Height));
    }

    private static void DrawRow(
        Picture picture,
        PixelMap map,
        int row,
        float[][] planes,
        Span<bool> covered
    )
    {
        var start = row * covered.Length;
        var places = ArrayPool<double>.Shared.Rent(2 * covered.Length);
        var x = places.AsSpan(0, covered.Length);
        var y = places.AsSpan(covered.Length, covered.Length);
        map.MapRow(row, x, y);
        for (var column = 0; column < covered.Length; column++)
        {
            var pixel = new PixelPosition(x[column], y[column]);
            var inside =
                pixel.X >= 0.5
                && pixel.X <= picture.Width + 0.5
                && pixel.Y >= 0.5
                && pixel.Y <= picture.Height + 0.5;
            var defined = inside;
            for (var plane = 0; plane < planes.Length; plane++)
            {
                var sample = inside
                    ? Bilinear.At(picture.Plane(plane), picture.Width, picture.Height, pixel)
                    : float.NaN;
                planes[plane][start + column] = sample;
                defined &= !float.IsNaN(sample);
            }

            covered[column] = defined;
        }

        ArrayPool<double>.Shared.Return(places);
    }
}
