using Framing.Sky;

namespace Framing.Solving;

/// <summary>Fits a frame to matched stars by least squares in the tangent plane of its middle.</summary>
/// <remarks>
/// <list type="number">
/// <item>The tangent point moves to the fitted middle until it stands still: planes at different tangent points differ by
/// more than a linear map.</item>
/// <item>Stars farther off than 3·√2 times the median residual's σ are left out, until the set stands still.</item>
/// <item>What bends all places alike, such as aberration and most of refraction, goes into centre, scale and angle.</item>
/// </list>
/// </remarks>
public static class FieldFitter
{
    private const int MostRounds = 25;

    // For errors along two axes with the same spread, half of the distances are below 1.1774 of it.
    private const double MedianOfRadius = 1.1774100225154747;

    /// <summary>Fits one model.</summary>
    /// <param name="matches">The stars; some may be wrong.</param>
    /// <param name="width">Columns of the frame.</param>
    /// <param name="height">Rows of the frame.</param>
    /// <param name="model">What may be bent.</param>
    /// <param name="keepAll">True where every star is known to be right: none is left out.</param>
    /// <returns>Null when there are too few stars for the model, or they do not settle it.</returns>
    public static FieldFit? Fit(
        IReadOnlyList<StarMatch> matches,
        int width,
        int height,
        FitModel model,
        bool keepAll = false
    )
    {
        ArgumentNullException.ThrowIfNull(matches);
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(height, 1);
        var used = Enumerable.Range(0, matches.Count).ToArray();
        for (var round = 0; round < MostRounds; round++)
        {
            if (PlaneFit.Of(matches, used, width, height, model) is not { } fit)
            {
                return null;
            }

            var radii = fit.Residuals(matches);
            var limit = 3.0 * Math.Sqrt(2.0) * Sigma(radii, used);
            int[] next =
            [
                .. Enumerable.Range(0, matches.Count).Where(star => radii[star] <= limit),
            ];
            if (keepAll || next.AsSpan().SequenceEqual(used) || round == MostRounds - 1)
            {
                return fit.Result(matches, used, radii);
            }

            used = next;
        }

        return null;
    }

    /// <summary>Fits the model that pays: plain, with one radial term, or with all terms up to order 3 and more.</summary>
    /// <param name="matches">The stars; some may be wrong.</param>
    /// <param name="width">Columns of the frame.</param>
    /// <param name="height">Rows of the frame.</param>
    /// <returns>Null when there are fewer than four stars or they do not settle a fit.</returns>
    /// <remarks>
    /// <list type="number">
    /// <item>An even order alone does nothing for a centred lens: from 1 the next step is 3. It is taken only if the
    /// residual, with its degrees of freedom, falls by more than 10 %.</item>
    /// <item>Order 3 begins with its one radial term, which asks for eight stars. All its terms, and then order 5, ask for
    /// five stars a coefficient pair, and for a fall of the residual by more than 10 % or more than chance would bring
    /// (ten over the degrees of freedom).</item>
    /// </list>
    /// </remarks>
    public static FieldFit? FitWhatPays(IReadOnlyList<StarMatch> matches, int width, int height)
    {
        ArgumentNullException.ThrowIfNull(matches);
        var best = Fit(matches, width, height, FitModel.Linear);
        if (best is null)
        {
            return null;
        }

        foreach (var model in new[] { FitModel.Radial, FitModel.Order3, FitModel.Order5 })
        {
            if (matches.Count < LeastStars(model))
            {
                break;
            }

            if (
                Fit(matches, width, height, model) is { } next
                && next.Used.Count >= Math.Max(LeastStars(model), 0.8 * best.Used.Count)
                && next.RmsPixels < (1.0 - LeastFall(best, next)) * best.RmsPixels
            )
            {
                best = next;
            }
        }

        return best;
    }

    private static double LeastFall(FieldFit before, FieldFit next)
    {
        var freedom = (2.0 * next.Used.Count) - PlaneFit.UnknownsOf(next.Model);
        return before.Model == FitModel.Linear ? 0.1 : Math.Min(0.1, 10.0 / freedom);
    }

    /// <summary>How many stars a model needs to be trusted.</summary>
    private static int LeastStars(FitModel model) =>
        model switch
        {
            FitModel.Linear => 4,
            FitModel.Radial => 8,
            _ => 5 * PlaneFit.TermsPerAxisOf(PlaneFit.OrderOf(model)),
        };

    private static double Sigma(double[] radii, int[] used)
    {
        var sorted = Array.ConvertAll(used, star => radii[star]);
        Array.Sort(sorted);
        var middle = sorted.Length / 2;
        var median =
            sorted.Length % 2 == 1 ? sorted[middle] : 0.5 * (sorted[middle - 1] + sorted[middle]);

        // A fit through a handful of exact places leaves rounding, which rejects nothing.
        return Math.Max(median / MedianOfRadius, 1e-6);
    }
}
