namespace Framing.Solving;

/// <summary>Linear least squares by normal equations, for a few unknowns of about unit size.</summary>
/// <param name="unknowns">How many unknowns.</param>
internal sealed class NormalEquations(int unknowns)
{
    private readonly double[,] matrix = new double[unknowns, unknowns];
    private readonly List<double[]> sides = [];

    /// <summary>Adds one observation for each right side.</summary>
    /// <param name="row">What each unknown is multiplied with.</param>
    /// <param name="values">The observed values.</param>
    public void Add(ReadOnlySpan<double> row, params ReadOnlySpan<double> values)
    {
        while (sides.Count < values.Length)
        {
            sides.Add(new double[unknowns]);
        }

        for (var i = 0; i < unknowns; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                matrix[i, j] += row[i] * row[j];
            }

            for (var side = 0; side < values.Length; side++)
            {
                sides[side][i] += row[i] * values[side];
            }
        }
    }

    /// <summary>The inverse of the matrix of the equations, which is the covariance for observations of unit variance.</summary>
    /// <returns>Null when the observations do not settle every unknown.</returns>
    public double[,]? Inverse()
    {
        var n = unknowns;
        var lower = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = matrix[i, j];
                for (var k = 0; k < j; k++)
                {
                    sum -= lower[i, k] * lower[j, k];
                }

                if (i != j)
                {
                    lower[i, j] = sum / lower[j, j];
                    continue;
                }

                // What is left of a diagonal after elimination is rounding when it is this much smaller.
                if (!(sum > 1e-13 * matrix[i, i]))
                {
                    return null;
                }

                lower[i, i] = Math.Sqrt(sum);
            }
        }

        var inverse = new double[n, n];
        var column = new double[n];
        for (var c = 0; c < n; c++)
        {
            for (var i = 0; i < n; i++)
            {
                var sum = i == c ? 1.0 : 0.0;
                for (var k = 0; k < i; k++)
                {
                    sum -= lower[i, k] * column[k];
                }

                column[i] = sum / lower[i, i];
            }

            for (var i = n - 1; i >= 0; i--)
            {
                var sum = column[i];
                for (var k = i + 1; k < n; k++)
                {
                    sum -= lower[k, i] * inverse[k, c];
                }

                inverse[i, c] = sum / lower[i, i];
            }
        }

        return inverse;
    }

    /// <summary>The unknowns for one right side.</summary>
    /// <param name="inverse">What <see cref="Inverse"/> gave.</param>
    /// <param name="side">Which side.</param>
    public double[] Solve(double[,] inverse, int side)
    {
        var solution = new double[unknowns];
        for (var i = 0; i < unknowns; i++)
        {
            for (var j = 0; j < unknowns; j++)
            {
                solution[i] += inverse[i, j] * sides[side][j];
            }
        }

        return solution;
    }
}
