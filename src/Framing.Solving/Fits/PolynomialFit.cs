using Framing.Sky;

namespace Framing.Solving;

/// <summary>A linear map with a distortion, from the frame to its tangent plane, by least squares.</summary>
/// <param name="Xi">Where the middle of the frame comes to lie in the plane, FITS degrees.</param>
/// <param name="Eta">Where the middle of the frame comes to lie in the plane, FITS degrees.</param>
/// <param name="Matrix">The linear map, FITS degrees a pixel.</param>
/// <param name="Distortion">The distortion in pixels; null for a linear fit.</param>
/// <param name="CentreVariance">Variance of the middle along an axis, for stars of unit variance.</param>
/// <param name="TurnVariance">Variance of the angle in radians times the half diagonal, for stars of unit variance.</param>
/// <param name="Unknowns">How many numbers were fitted.</param>
internal sealed record PolynomialFit(
    double Xi,
    double Eta,
    PixelMatrix Matrix,
    SipDistortion? Distortion,
    double CentreVariance,
    double TurnVariance,
    int Unknowns
)
{
    /// <summary>Fits a model.</summary>
    /// <param name="points">The stars.</param>
    /// <param name="unit">Pixels in the unit of the points.</param>
    /// <param name="model">What may be bent.</param>
    /// <param name="before">The matrix of the fit before; the radial term needs it.</param>
    /// <returns>Null when the stars do not settle the fit.</returns>
    public static PolynomialFit? Of(
        ReadOnlySpan<FitPoint> points,
        double unit,
        FitModel model,
        PixelMatrix? before
    ) =>
        model == FitModel.Radial && before is { } matrix
            ? Radial(points, unit, matrix)
            : Full(points, unit, model == FitModel.Radial ? 1 : PlaneFit.OrderOf(model));

    /// <summary>All terms up to an order; both axes have the same design.</summary>
    private static PolynomialFit? Full(ReadOnlySpan<FitPoint> points, double unit, int order)
    {
        var terms = (order + 1) * (order + 2) / 2;
        if (points.Length < terms)
        {
            return null;
        }

        var equations = new NormalEquations(terms);
        Span<double> row = stackalloc double[terms];
        foreach (var point in points)
        {
            // By rising degree: 1, u, v, u², uv, v², ...
            var term = 0;
            for (var degree = 0; degree <= order; degree++)
            {
                for (var q = 0; q <= degree; q++)
                {
                    row[term++] = Power(point.U, degree - q) * Power(point.V, q);
                }
            }

            equations.Add(row, point.Xi, point.Eta);
        }

        if (equations.Inverse() is not { } inverse)
        {
            return null;
        }

        var xi = equations.Solve(inverse, 0);
        var eta = equations.Solve(inverse, 1);
        var matrix = new PixelMatrix(xi[1] / unit, xi[2] / unit, eta[1] / unit, eta[2] / unit);
        return new(
            xi[0],
            eta[0],
            matrix,
            order >= 2 && matrix.IsUsable ? Bent(matrix, xi, eta, order, unit) : null,
            inverse[0, 0],
            0.25 * (inverse[1, 1] + inverse[2, 2]),
            2 * terms
        );
    }

    /// <summary>The linear map and one term that grows with the cube of the distance from the middle.</summary>
    private static PolynomialFit? Radial(
        ReadOnlySpan<FitPoint> points,
        double unit,
        PixelMatrix before
    )
    {
        if (points.Length < 4)
        {
            return null;
        }

        var equations = new NormalEquations(7);
        var size = before.Scale.Degrees * unit;
        foreach (var point in points)
        {
            var cube = (point.U * point.U) + (point.V * point.V);
            var bentXi = cube * ((before.Cd11 * point.U) + (before.Cd12 * point.V)) * unit / size;
            var bentEta = cube * ((before.Cd21 * point.U) + (before.Cd22 * point.V)) * unit / size;
            equations.Add([1.0, point.U, point.V, 0.0, 0.0, 0.0, bentXi], point.Xi);
            equations.Add([0.0, 0.0, 0.0, 1.0, point.U, point.V, bentEta], point.Eta);
        }

        if (equations.Inverse() is not { } inverse)
        {
            return null;
        }

        var solved = equations.Solve(inverse, 0);
        var matrix = new PixelMatrix(
            solved[1] / unit,
            solved[2] / unit,
            solved[4] / unit,
            solved[5] / unit
        );
        var k = solved[6] / size / (unit * unit);
        if (!matrix.IsUsable || !double.IsFinite(k))
        {
            return null;
        }

        return new(
            solved[0],
            solved[3],
            matrix,
            new(
                new(3, (p, q) => (p, q) is (3, 0) or (1, 2) ? k : 0.0),
                new(3, (p, q) => (p, q) is (0, 3) or (2, 1) ? k : 0.0)
            ),
            0.5 * (inverse[0, 0] + inverse[3, 3]),
            0.125 * (inverse[1, 1] + inverse[2, 2] + inverse[4, 4] + inverse[5, 5]),
            7
        );
    }

    /// <summary>The higher terms as a shift in pixels before the linear map.</summary>
    private static SipDistortion Bent(
        PixelMatrix matrix,
        double[] xi,
        double[] eta,
        int order,
        double unit
    )
    {
        var det = matrix.Determinant;
        var a = new double[order + 1, order + 1];
        var b = new double[order + 1, order + 1];
        var term = 3;
        for (var degree = 2; degree <= order; degree++)
        {
            for (var q = 0; q <= degree; q++, term++)
            {
                var scale = 1.0 / (det * Power(unit, degree));
                a[degree - q, q] = ((matrix.Cd22 * xi[term]) - (matrix.Cd12 * eta[term])) * scale;
                b[degree - q, q] = ((matrix.Cd11 * eta[term]) - (matrix.Cd21 * xi[term])) * scale;
            }
        }

        return new(new(order, (p, q) => a[p, q]), new(order, (p, q) => b[p, q]));
    }

    private static double Power(double value, int exponent)
    {
        var power = 1.0;
        for (var i = 0; i < exponent; i++)
        {
            power *= value;
        }

        return power;
    }
}
