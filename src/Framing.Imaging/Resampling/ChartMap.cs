using Framing.Sky;

namespace Framing.Imaging;

/// <summary>From the pixels of a chart over the sky to those of a picture.</summary>
internal sealed class ChartMap(WorldCoordinates chart, WorldCoordinates picture, PictureCap? cap)
{
    /// <summary>Where places of the chart lie in the picture; NaN where it does not show them.</summary>
    public void Map(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        Span<double> pictureX,
        Span<double> pictureY
    ) => chart.PixelToPixel(x, y, picture, pictureX, pictureY);

    /// <summary>True when a square of the chart surely shows no sky that the picture shows.</summary>
    /// <param name="x">The places of its middle and its corners, the middle first.</param>
    /// <param name="y">Their second coordinates.</param>
    public bool Misses(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        if (cap is null)
        {
            return false;
        }

        Span<double> ra = stackalloc double[x.Length];
        Span<double> dec = stackalloc double[x.Length];
        Span<MapFailure> failures = stackalloc MapFailure[x.Length];
        if (chart.PixelToSky(x, y, ra, dec, failures) > 0)
        {
            return false;
        }

        var middle = SkyDirection.FromDegrees(ra[0], dec[0]);
        var size = 0.0;
        for (var i = 1; i < x.Length; i++)
        {
            var corner = SkyDirection.FromDegrees(ra[i], dec[i]);
            size = Math.Max(size, middle.SeparationTo(corner).Radians);
        }

        // Sides bend out a little; a square across a seam of the chart has no size to go by.
        return size < 0.5 && cap.Misses(middle.Vector, 1.5 * size);
    }
}
