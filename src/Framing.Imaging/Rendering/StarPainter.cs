using Framing.Sky;

namespace Framing.Imaging;

/// <summary>Paints stars into a plane of samples: round spots with the soft wings that the air gives them.</summary>
/// <remarks>
/// The spot is the profile of Moffat 1969 (A&amp;A 3, 455) with an exponent of 3, (1 + r²/a²)^-3, cut off 12 half widths from its middle
/// and summed within each pixel over 5 by 5 places.
/// </remarks>
public sealed class StarPainter
{
    private const int Places = 5;
    private const double Exponent = 3.0;

    private readonly double core2;
    private readonly double reach;

    /// <summary>Makes a painter.</summary>
    /// <param name="fullWidthPixels">Full width at half of the peak, in pixels, 0.5 to 100.</param>
    public StarPainter(double fullWidthPixels)
    {
        if (!(fullWidthPixels is >= 0.5 and <= 100.0))
        {
            throw new ArgumentOutOfRangeException(
                nameof(fullWidthPixels),
                fullWidthPixels,
                "A star's full width is 0.5 to 100 pixels."
            );
        }

        var half = fullWidthPixels / 2.0;
        core2 = half * half / (Math.Pow(2.0, 1.0 / Exponent) - 1.0);
        reach = 12.0 * half;
    }

    /// <summary>Adds a star.</summary>
    /// <param name="plane">The samples, row after row.</param>
    /// <param name="width">Columns; the plane holds whole rows of them.</param>
    /// <param name="at">The star's middle, as FITS counts; it may lie outside.</param>
    /// <param name="flux">The sum of all that the star adds, were its spot not cut off, in the plane's numbers.</param>
    /// <exception cref="ArgumentException">The plane does not hold whole rows.</exception>
    public void Add(Span<float> plane, int width, PixelPosition at, double flux)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 1);
        if (plane.Length % width != 0)
        {
            throw new ArgumentException("The plane does not hold whole rows.", nameof(plane));
        }

        var height = plane.Length / width;
        var (x, y) = (at.X - 1.0, at.Y - 1.0);
        if (!(x > -reach - 1.0 && x < width + reach && y > -reach - 1.0 && y < height + reach))
        {
            return;
        }

        var (left, right) = (
            Math.Max(0, (int)Math.Ceiling(x - reach)),
            Math.Min(width - 1, (int)(x + reach))
        );
        var (low, high) = (
            Math.Max(0, (int)Math.Ceiling(y - reach)),
            Math.Min(height - 1, (int)(y + reach))
        );

        // The whole profile's integral is pi a^2 / (exponent - 1).
        var peak = flux * (Exponent - 1.0) / (Math.PI * core2);
        for (var row = low; row <= high; row++)
        {
            for (var column = left; column <= right; column++)
            {
                plane[(row * width) + column] += (float)(peak * Mean(column - x, row - y));
            }
        }
    }

    private double Mean(double dx, double dy)
    {
        var sum = 0.0;
        for (var i = 0; i < Places; i++)
        {
            for (var j = 0; j < Places; j++)
            {
                var sx = dx + ((i + 0.5) / Places) - 0.5;
                var sy = dy + ((j + 0.5) / Places) - 0.5;
                var t = 1.0 + (((sx * sx) + (sy * sy)) / core2);
                sum += 1.0 / (t * t * t);
            }
        }

        return sum / (Places * Places);
    }
}
