namespace Framing.Mosaics;

/// <summary>The standard normal distribution.</summary>
internal static class NormalDistribution
{
    /// <summary>The chance that a standard normal value is at most x; good to 2e-16.</summary>
    /// <remarks>
    /// Near the middle the series 1/2 + φ(x)·(x + x³/3 + x⁵/(3·5) + …), all of one sign (Marsaglia 2004, J. Stat. Softw. 11,
    /// 4); in the tails Laplace's continued fraction φ(x)/(x + 1/(x + 2/(x + 3/(x + …)))) (Abramowitz and Stegun, 26.2.14).
    /// </remarks>
    public static double Cumulative(double x)
    {
        if (double.IsNaN(x))
        {
            throw new ArgumentOutOfRangeException(nameof(x), x, "A normal value is a number.");
        }

        var far = Math.Abs(x);
        if (far > 40.0)
        {
            return x > 0.0 ? 1.0 : 0.0;
        }

        var density = Math.Exp(-x * x / 2.0) / Math.Sqrt(Math.Tau);
        if (far < 3.0)
        {
            var term = x;
            var sum = x;
            for (var k = 3; Math.Abs(term) > 1e-18 * Math.Abs(sum); k += 2)
            {
                term *= x * x / k;
                sum += term;
            }

            return 0.5 + (density * sum);
        }

        // 120 levels are more than double precision needs from 3 on.
        var fraction = far;
        for (var k = 120; k >= 1; k--)
        {
            fraction = far + (k / fraction);
        }

        var tail = density / fraction;
        return x > 0.0 ? 1.0 - tail : tail;
    }
}
