using Framing.Sky;

namespace Framing.Nights;

/// <summary>Chebyshev polynomials on -1 to +1: fitted to values at their own nodes, summed by Clenshaw's recurrence.</summary>
internal static class Chebyshev
{
    private static readonly double[,] Weights = Table(SiteDay.Order);

    /// <summary>The place of a node.</summary>
    public static double Node(int i, int order) => Math.Cos(Math.PI * (i + 0.5) / order);

    /// <summary>Puts coefficients in the place of values at the nodes.</summary>
    public static void Fit(double[] values)
    {
        var read = (double[])values.Clone();
        for (var k = 0; k < values.Length; k++)
        {
            var sum = 0.0;
            for (var i = 0; i < read.Length; i++)
            {
                sum += Weights[k, i] * read[i];
            }

            values[k] = sum;
        }
    }

    /// <inheritdoc cref="Fit(double[])"/>
    public static void Fit(Vector3D[] values)
    {
        var read = (Vector3D[])values.Clone();
        for (var k = 0; k < values.Length; k++)
        {
            var (x, y, z) = (0.0, 0.0, 0.0);
            for (var i = 0; i < read.Length; i++)
            {
                x += Weights[k, i] * read[i].X;
                y += Weights[k, i] * read[i].Y;
                z += Weights[k, i] * read[i].Z;
            }

            values[k] = new(x, y, z);
        }
    }

    public static double At(double[] coefficients, double x)
    {
        var (before, last, twice) = (0.0, 0.0, 2.0 * x);
        for (var k = coefficients.Length - 1; k > 0; k--)
        {
            (before, last) = (last, coefficients[k] + (twice * last) - before);
        }

        return coefficients[0] + (x * last) - before;
    }

    public static Vector3D At(Vector3D[] coefficients, double x)
    {
        var twice = 2.0 * x;
        var (bx, by, bz, lx, ly, lz) = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
        for (var k = coefficients.Length - 1; k > 0; k--)
        {
            ref readonly var c = ref coefficients[k];
            (bx, lx) = (lx, c.X + (twice * lx) - bx);
            (by, ly) = (ly, c.Y + (twice * ly) - by);
            (bz, lz) = (lz, c.Z + (twice * lz) - bz);
        }

        ref readonly var first = ref coefficients[0];
        return new(first.X + (x * lx) - bx, first.Y + (x * ly) - by, first.Z + (x * lz) - bz);
    }

    private static double[,] Table(int order)
    {
        var table = new double[order, order];
        for (var k = 0; k < order; k++)
        {
            for (var i = 0; i < order; i++)
            {
                table[k, i] =
                    (k == 0 ? 1.0 : 2.0) / order * Math.Cos(Math.PI * k * (i + 0.5) / order);
            }
        }

        return table;
    }
}
