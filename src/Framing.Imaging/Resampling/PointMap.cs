using Framing.Sky;

namespace Framing.Imaging;

/// <summary>From the pixels of a chart over the sky to those of a picture in any projection, point by point.</summary>
internal sealed class PointMap(WorldCoordinates chart, WorldCoordinates picture) : PixelMap
{
    /// <inheritdoc/>
    public override void MapRow(int row, Span<double> x, Span<double> y)
    {
        for (var column = 0; column < x.Length; column++)
        {
            (x[column], y[column]) =
                chart.TryPixelToSky(new(column + 1.0, row + 1.0), out var direction)
                && picture.TrySkyToPixel(direction, out var pixel)
                    ? (pixel.X, pixel.Y)
                    : (double.NaN, double.NaN);
        }
    }
}
