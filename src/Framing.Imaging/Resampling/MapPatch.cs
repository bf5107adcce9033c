namespace Framing.Imaging;

/// <summary>
/// The map over a square of a chart as two polynomials of second degree each way, through three by three exact places.
/// </summary>
/// <remarks>
/// <para>
/// How far they miss is measured at the sixteen places half way between: there the error of third order, a multiple of
/// t (t - 1) (t - 2), comes within 3 % of its greatest; at those half way both ways the errors of both axes add up. Twice
/// what is found there is the bound.
/// </para>
/// <para>Array coordinates: the middle of the picture's first pixel is (0, 0).</para>
/// </remarks>
internal readonly ref struct MapPatch
{
    /// <summary>Exact places along a side.</summary>
    public const int Side = 5;

    /// <summary>Exact places in all.</summary>
    public const int Nodes = Side * Side;

    private readonly ReadOnlySpan<double> x;
    private readonly ReadOnlySpan<double> y;
    private readonly double half;

    /// <summary>Fits the polynomials.</summary>
    /// <param name="x">First coordinates at five by five places of the square, row after row; kept.</param>
    /// <param name="y">Second coordinates.</param>
    /// <param name="size">The square's side in pixels of the chart.</param>
    public MapPatch(ReadOnlySpan<double> x, ReadOnlySpan<double> y, int size)
    {
        this.x = x;
        this.y = y;
        half = size / 2.0;
        (Left, Right) = Range(x);
        (Low, High) = Range(y);
        Bound = 2.0 * Math.Max(Miss(x), Miss(y));
    }

    /// <summary>How far the polynomials may be from the map, in pixels of the picture; NaN where a place is not known.</summary>
    public double Bound { get; }

    /// <summary>No place lies left of this.</summary>
    public double Left { get; }

    /// <summary>No place lies right of this.</summary>
    public double Right { get; }

    /// <summary>No place lies below this.</summary>
    public double Low { get; }

    /// <summary>No place lies above this.</summary>
    public double High { get; }

    /// <summary>The places of a row of the square: a + b k + c k² for its pixel k from 0.</summary>
    public (Parabola X, Parabola Y) Row(int row)
    {
        var v = row / half;
        var (w0, w1, w2) = ((v - 1.0) * (v - 2.0) / 2.0, v * (2.0 - v), v * (v - 1.0) / 2.0);
        return (Along(x, w0, w1, w2), Along(y, w0, w1, w2));
    }

    private Parabola Along(ReadOnlySpan<double> n, double w0, double w1, double w2)
    {
        var q0 = (w0 * n[0]) + (w1 * n[10]) + (w2 * n[20]);
        var q1 = (w0 * n[2]) + (w1 * n[12]) + (w2 * n[22]);
        var q2 = (w0 * n[4]) + (w1 * n[14]) + (w2 * n[24]);
        return new(
            q0,
            ((4.0 * q1) - (3.0 * q0) - q2) / (2.0 * half),
            (q0 - (2.0 * q1) + q2) / (2.0 * half * half)
        );
    }

    /// <summary>The range of the places, with room for what lies between them.</summary>
    private static (double Least, double Most) Range(ReadOnlySpan<double> n)
    {
        var (least, most, bend) = (n[0], n[0], 0.0);
        for (var i = 0; i < Nodes; i++)
        {
            least = Math.Min(least, n[i]);
            most = Math.Max(most, n[i]);
        }

        for (var i = 0; i < Side; i++)
        {
            bend = Math.Max(
                bend,
                Math.Max(
                    Math.Abs(n[i] - (2.0 * n[i + 10]) + n[i + 20]),
                    Math.Abs(n[Side * i] - (2.0 * n[(Side * i) + 2]) + n[(Side * i) + 4])
                )
            );
        }

        return (least - (bend / 4.0) - 1.0, most + (bend / 4.0) + 1.0);
    }

    private static double Miss(ReadOnlySpan<double> n)
    {
        // The weights of three places, at the quarters of a side.
        ReadOnlySpan<double> weights =
        [
            1.0,
            0.0,
            0.0,
            0.375,
            0.75,
            -0.125,
            0.0,
            1.0,
            0.0,
            -0.125,
            0.75,
            0.375,
            0.0,
            0.0,
            1.0,
        ];
        var miss = 0.0;
        for (var i = 0; i < Side; i++)
        {
            var up = weights.Slice(3 * i, 3);
            for (var j = 0; j < Side; j++)
            {
                var along = weights.Slice(3 * j, 3);
                var sum = 0.0;
                for (var k = 0; k < 3; k++)
                {
                    var at = 2 * Side * k;
                    sum +=
                        up[k]
                        * ((along[0] * n[at]) + (along[1] * n[at + 2]) + (along[2] * n[at + 4]));
                }

                miss = Math.Max(miss, Math.Abs(sum - n[(Side * i) + j]));
            }
        }

        return miss;
    }
}
