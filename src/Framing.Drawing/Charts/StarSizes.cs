namespace Framing.Drawing;

/// <summary>How large a star of a magnitude is drawn: its area grows with its light, down to the smallest dot that is drawn.</summary>
/// <param name="Faintest">Fainter stars are left out.</param>
/// <param name="FloorMagnitude">The magnitude at which a star reaches the smallest dot.</param>
/// <param name="FloorRadius">The radius of the smallest dot in pixels.</param>
/// <remarks>
/// A dot's radius is FloorRadius · 10^(0.2 (FloorMagnitude - V)): five magnitudes are a factor of 10 in radius and 100 in
/// area, as they are in light. Below the smallest dot the light goes into its opacity, down to 45 %.
/// </remarks>
internal sealed record StarSizes(double Faintest, double FloorMagnitude, double FloorRadius)
{
    private const double LeastOpacity = 0.45;
    public const int OpacitySteps = 8;

    /// <summary>Sizes for the stars of a chart.</summary>
    /// <param name="magnitudes">Magnitudes of the stars that stand in the chart, in any order.</param>
    /// <param name="most">How many stars are drawn at most.</param>
    /// <param name="floorRadius">The radius of the smallest dot in pixels; up to half as much again where stars are few.</param>
    /// <param name="largestRadius">The radius that the brightest star has at most; the third brightest has three quarters of it at most.</param>
    public static StarSizes For(
        IReadOnlyCollection<double> magnitudes,
        int most,
        double floorRadius,
        double largestRadius
    )
    {
        if (magnitudes.Count == 0)
        {
            return new(10.0, 8.0, floorRadius);
        }

        double[] sorted = [.. magnitudes];
        Array.Sort(sorted);

        // The limit is a round half magnitude, so that the legend can say it.
        var faintest =
            sorted.Length > most
                ? Math.Floor(sorted[most] * 2.0) / 2.0
                : Math.Ceiling(sorted[^1] * 2.0) / 2.0;

        // In a field of many stars the faintest 2.5 magnitudes are a dust of equal dots; where there are few, each is sized.
        var shown = Math.Min(most, sorted.Length);
        var dust = 2.5 * Math.Clamp(Math.Log10(shown / 100.0) / 1.3, 0.0, 1.0);
        floorRadius *= 1.0 + (0.2 * (2.5 - dust));
        var reach = 5.0 * Math.Log10(largestRadius / floorRadius);
        var third = sorted[Math.Min(2, sorted.Length - 1)] + (5.0 * Math.Log10(0.75));
        var floor = Math.Min(faintest - dust, Math.Min(sorted[0], third) + reach);
        return new(faintest, floor, floorRadius);
    }

    public double RadiusOf(double magnitude) =>
        FloorRadius * Math.Max(1.0, Math.Pow(10.0, 0.2 * (FloorMagnitude - magnitude)));

    /// <summary>The opacity of a star, in eighths of the way from the least to full, so that stars can be drawn together.</summary>
    public int OpacityStepOf(double magnitude)
    {
        var light = Math.Min(1.0, Math.Pow(10.0, 0.4 * (FloorMagnitude - magnitude)));
        return (int)Math.Round(Math.Sqrt(light) * OpacitySteps);
    }

    public static double OpacityOf(int step) =>
        LeastOpacity + ((1.0 - LeastOpacity) * step / OpacitySteps);
}
