using System.Runtime.CompilerServices;

namespace Framing.Imaging;

/// <summary>Measures peaks of a plane: middle, light, width and shape under a round bell-shaped window that settles on the star.</summary>
/// <remarks>
/// <para>
/// The middle moves by twice the weighted mean offset until it rests; with a window as wide as the star that is as good as
/// noise allows. Under a window of sigma w a bell of covariance C shows the covariance (1/C + 1/w²)⁻¹, which gives C.
/// </para>
/// <para>Keeps buffers: one for each thread.</para>
/// </remarks>
internal sealed class StarMeasure(StarPlane plane, BackgroundMesh mesh)
{
    private const int MostReach = 48;
    private const int RingPoints = 120;

    /// <summary>Where the ring about a star lies, in full widths of the window: near, that a knot of a nebula lifts both alike.</summary>
    private const double NearRing = 2.2;
    private const double FarRing = 3.5;

    private static readonly (double Sin, double Cos)[] ringDirections =
    [
        .. Enumerable
            .Range(0, RingPoints / 3)
            .Select(i => Math.SinCos(i * (2.0 * Math.PI / (RingPoints / 3)))),
    ];

    private readonly double[] columnWeights = new double[(2 * MostReach) + 1];
    private readonly double[] rowWeights = new double[(2 * MostReach) + 1];
    private readonly float[] ring = new float[RingPoints];
    private double light,
        meanX,
        meanY,
        spreadX,
        spreadY,
        spreadXy;

    /// <summary>Measures a peak.</summary>
    /// <param name="x">Column from 0.</param>
    /// <param name="y">Row from 0.</param>
    /// <param name="window">Sigma of the window at first, in pixels.</param>
    /// <param name="settle">True to let the window take the star's own width; false to keep it while the middle is sought.</param>
    /// <param name="shape">What was measured.</param>
    /// <returns>False when no star is there: no light, a middle that runs away, or the border too near.</returns>
    public bool TryMeasure(double x, double y, double window, bool settle, out StarShape shape)
    {
        shape = default;
        var (level, noise) = Surroundings(x, y, window, settle);
        var (startX, startY, sigma) = (x, y, window);
        for (var round = 0; ; round++)
        {
            if (!Sum(x, y, sigma, level) || light <= 0.0)
            {
                return false;
            }

            var (stepX, stepY) = (
                Math.Clamp(2.0 * meanX, -sigma, sigma),
                Math.Clamp(2.0 * meanY, -sigma, sigma)
            );
            (x, y) = (x + stepX, y + stepY);
            var still = Math.Abs(stepX) + Math.Abs(stepY) < 0.004;
            if (settle)
            {
                var own = OwnSigma(sigma, out _, out _);
                var next = Math.Clamp(own, 0.55, Math.Min(MostReach / 3.0, sigma * 1.6));
                still &= Math.Abs(next - sigma) < 0.02 * sigma;
                sigma = still ? sigma : next;
                (level, noise) = Surroundings(x, y, sigma, settle);
            }

            var reach = (3.0 * Math.Max(sigma, window)) + 1.5;
            if (Math.Abs(x - startX) > reach || Math.Abs(y - startY) > reach)
            {
                return false;
            }

            if (still || round == 14)
            {
                break;
            }
        }

        if (
            x < 1.5
            || y < 1.5
            || x > plane.Width - 2.5
            || y > plane.Height - 2.5
            || !Sum(x, y, sigma, level)
            || light <= 0.0
        )
        {
            return false;
        }

        shape = new()
        {
            X = x,
            Y = y,
            Light = light,
            Window = sigma,
            Background = level,
            Noise = noise,
            SignalToNoise =
                light / Math.Max(noise * plane.JoinedNoise * Math.Sqrt(Math.PI) * sigma, 1e-9),
            Peak = PeakNear(x, y) - level,
        };
        shape = WithShape(shape, settle);
        return true;
    }

    /// <summary>All light within a radius, the background taken away.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Flux(in StarShape shape, double radius)
    {
        var reach = (int)Math.Ceiling(radius + 0.5);
        var (cx, cy) = ((int)Math.Round(shape.X), (int)Math.Round(shape.Y));
        var sum = 0.0;
        for (var y = Math.Max(0, cy - reach); y <= Math.Min(plane.Height - 1, cy + reach); y++)
        {
            for (var x = Math.Max(0, cx - reach); x <= Math.Min(plane.Width - 1, cx + reach); x++)
            {
                // A pixel on the circle counts by the part of it that lies inside, near enough.
                var inside = radius + 0.5 - double.Hypot(x - shape.X, y - shape.Y);
                var value = plane.Samples[(y * plane.Width) + x];
                if (inside > 0.0 && float.IsFinite(value))
                {
                    sum += Math.Min(inside, 1.0) * (value - shape.Background);
                }
            }
        }

        return sum;
    }

    /// <summary>The light of the eight pixels around the brightest one over the light of that one, in the samples as read.</summary>
    /// <remarks>About 0 for a hot pixel, 1.5 for a star half as wide again as a pixel, 4 for one of 2.5 pixels.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Surround(int column, int row)
    {
        var (bestX, bestY, best) = (column, row, float.NegativeInfinity);
        for (var y = Math.Max(1, row - 1); y <= Math.Min(plane.Height - 2, row + 1); y++)
        {
            for (var x = Math.Max(1, column - 1); x <= Math.Min(plane.Width - 2, column + 1); x++)
            {
                var value = Above(x, y);
                if (value > best)
                {
                    (bestX, bestY, best) = (x, y, value);
                }
            }
        }

        if (best <= 0f)
        {
            return double.PositiveInfinity;
        }

        var sum = 0f;
        for (var y = bestY - 1; y <= bestY + 1; y++)
        {
            for (var x = bestX - 1; x <= bestX + 1; x++)
            {
                sum += Above(x, y);
            }
        }

        return (sum / best) - 1.0;
    }

    private float Above(int x, int y)
    {
        var ratio = plane.PatternRatio[((y & 1) * 2) + (x & 1)];
        return plane.Raw[(y * plane.Width) + x] - (float)(ratio * mesh.At(x, y).Level);
    }

    private double PeakNear(double x, double y)
    {
        var (cx, cy) = ((int)Math.Round(x), (int)Math.Round(y));
        var best = float.NegativeInfinity;
        for (var row = Math.Max(0, cy - 1); row <= Math.Min(plane.Height - 1, cy + 1); row++)
        {
            for (
                var column = Math.Max(0, cx - 1);
                column <= Math.Min(plane.Width - 1, cx + 1);
                column++
            )
            {
                var value = plane.Samples[(row * plane.Width) + column];
                best = value > best ? value : best;
            }
        }

        return best;
    }

    /// <summary>Background and noise on a ring about the star, where they differ from the mesh: in a nebula, beside a bright star.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private (double Level, double Noise) Surroundings(
        double x,
        double y,
        double window,
        bool settle
    )
    {
        var (level, noise) = mesh.At(x, y);
        var far = Math.Max((settle ? FarRing : NearRing) * window * StarShape.WidthOverSigma, 6.0);
        var count = 0;
        for (var i = 0; i < RingPoints; i++)
        {
            var (sin, cos) = ringDirections[i / 3];
            var r = far + (i % 3 * 1.3);
            var (column, row) = ((int)Math.Round(x + (r * cos)), (int)Math.Round(y + (r * sin)));
            if (column < 0 || row < 0 || column >= plane.Width || row >= plane.Height)
            {
                continue;
            }

            var value = plane.Samples[(row * plane.Width) + column];
            if (float.IsFinite(value) && value != plane.Dead)
            {
                ring[count++] = value;
            }
        }

        if (count < RingPoints / 3)
        {
            return (level, noise);
        }

        Array.Sort(ring, 0, count);
        var middle = ring[count / 2];

        // From 1 sigma below to the upper quartile: a star or two on the ring do not count, an edge through it does.
        var scatter = (ring[count * 3 / 4] - ring[count * 16 / 100]) / 1.669f;
        return (
            Math.Abs(middle - level) > 0.3 * noise ? middle : level,
            Math.Max(noise, 0.75 * scatter)
        );
    }

    /// <summary>Sums the light under the window, and its first and second moments about the window's middle.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private bool Sum(double x, double y, double sigma, double level)
    {
        var reach = Math.Min(MostReach, (int)Math.Ceiling(3.0 * sigma) + 1);
        var (cx, cy) = ((int)Math.Round(x), (int)Math.Round(y));
        var (x0, x1) = (Math.Max(0, cx - reach), Math.Min(plane.Width - 1, cx + reach));
        var (y0, y1) = (Math.Max(0, cy - reach), Math.Min(plane.Height - 1, cy + reach));
        if (x0 >= x1 || y0 >= y1)
        {
            return false;
        }

        var half = 1.0 / (2.0 * sigma * sigma);
        for (var i = x0; i <= x1; i++)
        {
            columnWeights[i - x0] = Math.Exp(-(i - x) * (i - x) * half);
        }

        for (var j = y0; j <= y1; j++)
        {
            rowWeights[j - y0] = Math.Exp(-(j - y) * (j - y) * half);
        }

        double s = 0.0,
            sx = 0.0,
            sy = 0.0,
            sxx = 0.0,
            syy = 0.0,
            sxy = 0.0;
        for (var j = y0; j <= y1; j++)
        {
            double r = 0.0,
                rx = 0.0,
                rxx = 0.0;
            var row = plane.Samples.AsSpan((j * plane.Width) + x0, x1 - x0 + 1);
            for (var i = 0; i < row.Length; i++)
            {
                var value = row[i] - level;
                if (!double.IsFinite(value))
                {
                    continue;
                }

                var w = value * columnWeights[i];
                var dx = x0 + i - x;
                r += w;
                rx += w * dx;
                rxx += w * dx * dx;
            }

            var weight = rowWeights[j - y0];
            var dy = j - y;
            s += weight * r;
            sx += weight * rx;
            sy += weight * dy * r;
            sxx += weight * rxx;
            sxy += weight * dy * rx;
            syy += weight * dy * dy * r;
        }

        light = s;
        meanX = sx / s;
        meanY = sy / s;
        spreadX = (sxx / s) - (meanX * meanX);
        spreadY = (syy / s) - (meanY * meanY);
        spreadXy = (sxy / s) - (meanX * meanY);
        return true;
    }

    /// <summary>The star's own sigma from the moments under a window; and the two of its axes.</summary>
    private double OwnSigma(double window, out double longAxis, out double shortAxis)
    {
        var mean = (spreadX + spreadY) / 2.0;
        var half = double.Hypot((spreadX - spreadY) / 2.0, spreadXy);
        longAxis = Unwindowed(mean + half, window);
        shortAxis = Unwindowed(mean - half, window);
        return Math.Sqrt(longAxis * shortAxis);
    }

    /// <summary>Sigma along an axis without the window: 1/c = 1/m - 1/w². What is as wide as the window counts as three times as wide.</summary>
    private static double Unwindowed(double spread, double window)
    {
        var square = window * window;
        return spread <= 0.04 * square ? 0.2 * window
            : spread >= 0.9 * square ? 3.0 * window
            : Math.Sqrt(spread * square / (square - spread));
    }

    private StarShape WithShape(in StarShape shape, bool settled)
    {
        var sigma = shape.Window;
        for (var round = 0; !settled && round < 4; round++)
        {
            // The middle stands; only the window follows the star's width.
            var next = Math.Clamp(OwnSigma(sigma, out _, out _), 0.55, MostReach / 3.0);
            var still = Math.Abs(next - sigma) < 0.05 * sigma;
            if (still || !Sum(shape.X, shape.Y, next, shape.Background) || light <= 0.0)
            {
                break;
            }

            sigma = next;
        }

        var own = OwnSigma(sigma, out var longAxis, out var shortAxis);
        var direction = 0.5 * Math.Atan2(2.0 * spreadXy, spreadX - spreadY);
        return shape with
        {
            Sigma = own,
            Elongation = longAxis / shortAxis,
            Direction = direction < 0.0 ? direction + Math.PI : direction,
        };
    }
}
