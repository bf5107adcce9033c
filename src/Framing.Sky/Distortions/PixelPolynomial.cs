namespace Framing.Sky;

/// <summary>A polynomial in two variables: the sum of c[p, q] u^p v^q over p + q up to an order.</summary>
/// <remarks>Immutable. Source of the form: the SIP convention, FITS registry.</remarks>
public sealed class PixelPolynomial
{
    /// <summary>The highest order there is a use for.</summary>
    public const int MostOrder = 9;

    // Row after row of p: c[p, 0], c[p, 1], ... c[p, Order - p].
    private readonly double[] terms;

    /// <summary>Makes a polynomial.</summary>
    /// <param name="order">The highest p + q, 0 to 9.</param>
    /// <param name="coefficient">Gives c[p, q], finite; asked once for each p + q up to the order.</param>
    /// <exception cref="ArgumentOutOfRangeException">The order is out of its range.</exception>
    /// <exception cref="ArgumentException">A coefficient is not finite.</exception>
    public PixelPolynomial(int order, Func<int, int, double> coefficient)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(order);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(order, MostOrder);
        ArgumentNullException.ThrowIfNull(coefficient);
        Order = order;
        terms = new double[(order + 1) * (order + 2) / 2];
        var at = 0;
        for (var p = 0; p <= order; p++)
        {
            for (var q = 0; q <= order - p; q++)
            {
                var value = coefficient(p, q);
                terms[at++] = double.IsFinite(value)
                    ? value
                    : throw new ArgumentException(
                        FormattableString.Invariant($"The coefficient [{p}, {q}] is {value}."),
                        nameof(coefficient)
                    );
            }
        }
    }

    /// <summary>The highest p + q.</summary>
    public int Order { get; }

    /// <summary>The coefficients, row after row of p.</summary>
    internal ReadOnlySpan<double> Terms => terms;

    /// <summary>The coefficient of u^p v^q; 0 beyond the order.</summary>
    /// <param name="p">The power of u, 0 or more.</param>
    /// <param name="q">The power of v, 0 or more.</param>
    public double this[int p, int q] =>
        p >= 0 && q >= 0 && p + q <= Order ? terms[(p * (Order + 1)) - (p * (p - 1) / 2) + q] : 0.0;

    /// <summary>The value at a place.</summary>
    /// <param name="u">First variable.</param>
    /// <param name="v">Second variable.</param>
    /// <returns>The sum.</returns>
    public double At(double u, double v)
    {
        var sum = 0.0;
        var at = terms.Length;
        for (var p = Order; p >= 0; p--)
        {
            var row = 0.0;
            for (var q = Order - p; q >= 0; q--)
            {
                row = (row * v) + terms[--at];
            }

            sum = (sum * u) + row;
        }

        return sum;
    }

    /// <summary>The value and both derivatives at a place.</summary>
    /// <param name="u">First variable.</param>
    /// <param name="v">Second variable.</param>
    /// <param name="alongU">The derivative by u.</param>
    /// <param name="alongV">The derivative by v.</param>
    /// <returns>The sum.</returns>
    public double At(double u, double v, out double alongU, out double alongV)
    {
        var sum = 0.0;
        (alongU, alongV) = (0.0, 0.0);
        var at = terms.Length;
        for (var p = Order; p >= 0; p--)
        {
            var (row, slope) = (0.0, 0.0);
            for (var q = Order - p; q >= 0; q--)
            {
                slope = (slope * v) + row;
                row = (row * v) + terms[--at];
            }

            alongU = (alongU * u) + sum;
            sum = (sum * u) + row;
            alongV = (alongV * u) + slope;
        }

        return sum;
    }

    /// <summary>The polynomial whose coefficients are multiplied each by a factor of its own.</summary>
    /// <param name="factor">Gives the factor of c[p, q].</param>
    /// <returns>The polynomial.</returns>
    internal PixelPolynomial Scaled(Func<int, int, double> factor) =>
        new(Order, (p, q) => this[p, q] * factor(p, q));
}
