namespace Framing.Rehearsal;

/// <summary>The image of a star: a core with wings, drawn out by coma and by trailing; or a disc with a hole, out of focus.</summary>
/// <remarks>
/// The core is Moffat's law with exponent 3 (A. F. J. Moffat 1969, A&amp;A 3, 455), whose wings are about those of the air. All
/// parts together have their middle where the star stands.
/// </remarks>
internal sealed class PointSpread
{
    /// <summary>Full width over the radius alpha of Moffat's law with exponent 3: 2 sqrt(2^(1/3) - 1).</summary>
    private const double WidthOverAlpha = 1.0196490;

    private static readonly double[] tail = [1.0, 0.55, 0.36, 0.25, 0.17, 0.1];

    private readonly List<SpreadPart> parts = [];
    private readonly double trailX;
    private readonly double trailY;
    private readonly double disc;
    private bool fine;

    public PointSpread(double trailX, double trailY, double disc) =>
        (this.trailX, this.trailY, this.disc) = (trailX, trailY, disc);

    /// <summary>How far a star's light has to be followed until it sinks below a number of electrons a pixel.</summary>
    public double Reach(in StarLight star, double least)
    {
        var alpha = star.Width / WidthOverAlpha;
        var top = star.Electrons * 2.0 / (Math.PI * alpha * alpha);
        var wings = alpha * Math.Pow(Math.Max(top / least, 1.0), 1.0 / 6.0);
        return Math.Clamp(wings, 2.0, 300.0)
            + double.Hypot(star.TailX, star.TailY)
            + (double.Hypot(trailX, trailY) / 2.0)
            + disc
            + 2.0;
    }

    /// <summary>Adds a star to some rows.</summary>
    /// <param name="star">The star.</param>
    /// <param name="reach">How far it is followed.</param>
    /// <param name="frame">The frame's electrons.</param>
    /// <param name="width">Its columns.</param>
    /// <param name="fromRow">The first row to be drawn.</param>
    /// <param name="toRow">The row after the last.</param>
    /// <param name="colours">What of the star's light each pixel of a 2 x 2 pattern receives.</param>
    public void Add(
        in StarLight star,
        double reach,
        float[] frame,
        int width,
        int fromRow,
        int toRow,
        ReadOnlySpan<float> colours
    )
    {
        Lay(star);
        var y0 = Math.Max(fromRow, (int)Math.Floor(star.Y - reach));
        var y1 = Math.Min(toRow - 1, (int)Math.Ceiling(star.Y + reach));
        var x0 = Math.Max(0, (int)Math.Floor(star.X - reach));
        var x1 = Math.Min(width - 1, (int)Math.Ceiling(star.X + reach));
        for (var y = y0; y <= y1; y++)
        {
            for (var x = x0; x <= x1; x++)
            {
                var share = ShareOf(x - star.X, y - star.Y);
                frame[(y * width) + x] += (float)(
                    star.Electrons * share * colours[((y & 1) * 2) + (x & 1)]
                );
            }
        }
    }

    /// <summary>The share of the light that falls on the pixel whose middle lies so far from the star's.</summary>
    public double ShareOf(double dx, double dy)
    {
        if (disc > 0.0)
        {
            return DiscShare(double.Hypot(dx, dy), parts[0].Width);
        }

        var sum = 0.0;
        foreach (var part in parts)
        {
            sum += part.Weight * SpotShare(dx - part.X, dy - part.Y, part.Width, fine);
        }

        return sum;
    }

    /// <summary>Lays out the parts of a star's image.</summary>
    public void Lay(in StarLight star)
    {
        parts.Clear();
        var length = double.Hypot(star.TailX, star.TailY);
        fine = !star.IsFaint;
        var spots = fine && length > 0.15 * star.Width ? tail.Length : 1;
        var trail = double.Hypot(trailX, trailY);
        var steps = 1 + (int)Math.Ceiling(trail / (0.35 * star.Width));
        double meanX = 0.0,
            meanY = 0.0,
            total = 0.0;
        for (var i = 0; i < spots; i++)
        {
            var along = spots == 1 ? 0.0 : (double)i / (spots - 1);
            var spot = double.Hypot(star.Width, 0.5 * along * length);
            for (var step = 0; step < steps; step++)
            {
                var time = steps == 1 ? 0.0 : ((step + 0.5) / steps) - 0.5;
                var part = new SpreadPart(
                    (along * star.TailX) + (time * trailX),
                    (along * star.TailY) + (time * trailY),
                    tail[i] / steps,
                    spot
                );
                parts.Add(part);
                meanX += part.Weight * part.X;
                meanY += part.Weight * part.Y;
                total += part.Weight;
            }
        }

        (meanX, meanY) = (meanX / total, meanY / total);
        for (var i = 0; i < parts.Count; i++)
        {
            var part = parts[i];
            parts[i] = new(part.X - meanX, part.Y - meanY, part.Weight / total, part.Width);
        }
    }

    private static double SpotShare(double dx, double dy, double width, bool fine)
    {
        var alpha = width / WidthOverAlpha;
        var square = alpha * alpha;
        var far = (dx * dx) + (dy * dy);

        // Near the middle the light changes within a pixel: a grid of points stands for its area.
        var points =
            far > (4.0 * square) + 2.0 ? 1
            : !fine ? 2
            : width < 2.0 ? 5
            : width < 4.0 ? 3
            : 2;
        var sum = 0.0;
        for (var i = 0; i < points; i++)
        {
            var x = dx + ((i + 0.5) / points) - 0.5;
            for (var j = 0; j < points; j++)
            {
                var y = dy + ((j + 0.5) / points) - 0.5;
                var q = 1.0 + (((x * x) + (y * y)) / square);
                sum += 1.0 / (q * q * q);
            }
        }

        return sum * 2.0 / (Math.PI * square * points * points);
    }

    /// <summary>A disc with a hole of a third of its width and soft edges.</summary>
    private double DiscShare(double radius, double width)
    {
        var hole = disc / 3.0;
        var edge = Math.Max(width / 2.0, 0.7);
        var outer = 1.0 / (1.0 + Math.Exp((radius - disc) / (0.5 * edge)));
        var inner = 1.0 / (1.0 + Math.Exp((hole - radius) / (0.5 * edge)));
        return outer * inner / (Math.PI * ((disc * disc) - (hole * hole)));
    }
}
