using Framing.Sky;

namespace Framing.Fits;

/// <summary>
/// Fits the reverse polynomials of a distortion over a picture, for readers of the file that go from the sky to pixels by
/// these alone.
/// </summary>
/// <remarks>
/// Least squares over a grid of pixels that reaches a little beyond the picture, by orthogonal columns (modified
/// Gram-Schmidt, Björck 1967), which keeps the digits that normal equations lose.
/// </remarks>
internal static class ReverseTerms
{
    private const int GridSteps = 32;

    /// <summary>How far the grid reaches beyond the picture's middle, in half sizes.</summary>
    private const double Reach = 1.05;

    /// <summary>The same distortion with reverse polynomials; those that it has stay.</summary>
    /// <param name="sip">The distortion.</param>
    /// <param name="referencePixel">CRPIX.</param>
    /// <param name="width">Columns of the picture.</param>
    /// <param name="height">Rows of the picture.</param>
    public static SipDistortion Of(
        SipDistortion sip,
        PixelPosition referencePixel,
        int width,
        int height
    )
    {
        if (sip is { Ap: not null, Bp: not null })
        {
            return sip;
        }

        // The inverse of a polynomial is no polynomial; one order more than the way there leaves it thousandths of a pixel off.
        var order = Math.Clamp(
            Math.Max(sip.A.Order, sip.B.Order) + 1,
            2,
            PixelPolynomial.MostOrder
        );
        var (middleX, middleY) = ((width + 1) / 2.0, (height + 1) / 2.0);
        var points = (GridSteps + 1) * (GridSteps + 1);
        var (u, v) = (new double[points], new double[points]);
        var back = (U: new double[points], V: new double[points]);
        var unit = 0.0;
        for (var i = 0; i < points; i++)
        {
            var along = ((i % (GridSteps + 1)) * 2.0 / GridSteps) - 1.0;
            var up = ((i / (GridSteps + 1)) * 2.0 / GridSteps) - 1.0;
            var placeU = middleX + (along * Reach * width / 2.0) - referencePixel.X;
            var placeV = middleY + (up * Reach * height / 2.0) - referencePixel.Y;
            (u[i], v[i]) = sip.Apply(placeU, placeV);
            (back.U[i], back.V[i]) = (placeU - u[i], placeV - v[i]);
            unit = Math.Max(unit, Math.Max(Math.Abs(u[i]), Math.Abs(v[i])));
        }

        var columns = new List<double[]>();
        for (var p = 0; p <= order; p++)
        {
            for (var q = 0; q <= order - p; q++)
            {
                var (powerU, powerV) = (p, q);
                columns.Add([
                    .. Enumerable
                        .Range(0, points)
                        .Select(i => Math.Pow(u[i] / unit, powerU) * Math.Pow(v[i] / unit, powerV)),
                ]);
            }
        }

        var solved = Solve(columns, back.U, back.V);
        return new(sip.A, sip.B, Terms(solved.First), Terms(solved.Second));

        PixelPolynomial Terms(double[] values)
        {
            var at = 0;
            return new(order, (p, q) => values[at++] / Math.Pow(unit, p + q));
        }
    }

    /// <summary>Two least-squares solutions over the same columns.</summary>
    private static (double[] First, double[] Second) Solve(
        List<double[]> columns,
        double[] first,
        double[] second
    )
    {
        var count = columns.Count;
        var upper = new double[count, count + 2];
        double[][] sides = [first, second];
        var whole = columns.ConvertAll(column => Math.Sqrt(Dot(column, column)));
        for (var k = 0; k < count; k++)
        {
            var length = Math.Sqrt(Dot(columns[k], columns[k]));
            if (length <= 1e-12 * whole[k])
            {
                // A picture of a row or a column does not settle this term: it is left at 0.
                Array.Clear(columns[k]);
                (upper[k, k], length) = (1.0, 1.0);
            }
            else
            {
                upper[k, k] = length;
            }

            for (var i = 0; i < columns[k].Length; i++)
            {
                columns[k][i] /= length;
            }

            for (var j = k + 1; j < count + 2; j++)
            {
                var other = j < count ? columns[j] : sides[j - count];
                var share = upper[k, j] = Dot(columns[k], other);
                for (var i = 0; i < other.Length; i++)
                {
                    other[i] -= share * columns[k][i];
                }
            }
        }

        return (BackSubstituted(upper, count, count), BackSubstituted(upper, count, count + 1));
    }

    private static double[] BackSubstituted(double[,] upper, int count, int side)
    {
        var values = new double[count];
        for (var k = count - 1; k >= 0; k--)
        {
            var sum = upper[k, side];
            for (var j = k + 1; j < count; j++)
            {
                sum -= upper[k, j] * values[j];
            }

            values[k] = sum / upper[k, k];
        }

        return values;
    }

    private static double Dot(double[] one, double[] other)
    {
        var sum = 0.0;
        for (var i = 0; i < one.Length; i++)
        {
            sum += one[i] * other[i];
        }

        return sum;
    }
}
