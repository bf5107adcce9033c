using Framing.Sky;

namespace Framing.Solving;

/// <summary>A distortion in the SIP convention: polynomials that are added to the distance from the reference pixel.</summary>
/// <remarks>
/// Shupe et al. 2005, ADASS XIV: u = x - CRPIX1, v = y - CRPIX2; u + Σ A_p_q u^p v^q and v + Σ B_p_q u^p v^q go into the CD
/// matrix; 2 ≤ p + q ≤ order.
/// </remarks>
public sealed class SipTerms
{
    private readonly double[,] a;
    private readonly double[,] b;

    /// <summary>Makes a distortion.</summary>
    /// <param name="order">A_ORDER and B_ORDER, 2 to 9.</param>
    /// <param name="a">A_p_q at [p, q], in pixels to the power 1 - p - q; entries outside 2 ≤ p + q ≤ order are not used.</param>
    /// <param name="b">B_p_q at [p, q].</param>
    /// <exception cref="ArgumentOutOfRangeException">The order is outside 2 to 9.</exception>
    /// <exception cref="ArgumentException">A table is smaller than the order needs.</exception>
    public SipTerms(int order, double[,] a, double[,] b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        ArgumentOutOfRangeException.ThrowIfLessThan(order, 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(order, 9);
        ThrowIfSmall(order, a, nameof(a));
        ThrowIfSmall(order, b, nameof(b));
        Order = order;
        this.a = (double[,])a.Clone();
        this.b = (double[,])b.Clone();
    }

    /// <summary>A_ORDER and B_ORDER.</summary>
    public int Order { get; }

    /// <summary>How many coefficients each axis has.</summary>
    public int TermsPerAxis => TermsPerAxisOf(Order);

    /// <summary>How many coefficients an axis has at an order: all with 2 ≤ p + q ≤ order.</summary>
    /// <param name="order">The order, 1 or more.</param>
    /// <returns>(order + 1)(order + 2)/2 - 3.</returns>
    public static int TermsPerAxisOf(int order) => ((order + 1) * (order + 2) / 2) - 3;

    /// <summary>A_p_q.</summary>
    /// <param name="p">Power of u.</param>
    /// <param name="q">Power of v.</param>
    public double A(int p, int q) => p + q >= 2 && p + q <= Order ? a[p, q] : 0.0;

    /// <summary>B_p_q.</summary>
    /// <param name="p">Power of u.</param>
    /// <param name="q">Power of v.</param>
    public double B(int p, int q) => p + q >= 2 && p + q <= Order ? b[p, q] : 0.0;

    /// <summary>What is added to a distance from the reference pixel.</summary>
    /// <param name="u">Pixels along the first axis from the reference pixel.</param>
    /// <param name="v">Pixels along the second axis.</param>
    /// <returns>The shift in pixels.</returns>
    public (double U, double V) Shift(double u, double v)
    {
        double shiftU = 0.0,
            shiftV = 0.0,
            powerU = 1.0;
        for (var p = 0; p <= Order; p++)
        {
            var power = powerU;
            for (var q = 0; q <= Order - p; q++)
            {
                if (p + q >= 2)
                {
                    shiftU += a[p, q] * power;
                    shiftV += b[p, q] * power;
                }

                power *= v;
            }

            powerU *= u;
        }

        return (shiftU, shiftV);
    }

    /// <summary>The distance from the reference pixel that a distortion carries to a given one.</summary>
    /// <param name="straightU">Undistorted pixels along the first axis.</param>
    /// <param name="straightV">Undistorted pixels along the second axis.</param>
    /// <param name="u">The place in the frame.</param>
    /// <param name="v">The place in the frame.</param>
    /// <returns>False where the steps do not settle: far outside the frame a polynomial folds over.</returns>
    public bool TryUndo(double straightU, double straightV, out double u, out double v)
    {
        (u, v) = (straightU, straightV);
        for (var i = 0; i < 50; i++)
        {
            var (shiftU, shiftV) = Shift(u, v);
            double nextU = straightU - shiftU,
                nextV = straightV - shiftV;
            var step = Math.Abs(nextU - u) + Math.Abs(nextV - v);
            (u, v) = (nextU, nextV);
            if (step < 1e-9)
            {
                return true;
            }

            if (!double.IsFinite(step))
            {
                return false;
            }
        }

        return false;
    }

    private static void ThrowIfSmall(int order, double[,] table, string name)
    {
        if (table.GetLength(0) <= order || table.GetLength(1) <= order)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"A distortion of order {order} needs a table of {order + 1} by {order + 1}, not {table.GetLength(0)} by {table.GetLength(1)}."
                ),
                name
            );
        }
    }
}
