namespace Framing.Nights;

/// <summary>What is lost in the air on the way down.</summary>
public static class Extinction
{
    /// <summary>Loss at a dark site, magnitudes for each airmass: 0.2 to 0.3 (common practice, from memory).</summary>
    public const double UsualPerAirmass = 0.25;

    /// <summary>How much longer must be exposed lower down to reach the same depth, the sky's brightness setting the limit.</summary>
    /// <param name="perAirmass">Loss in magnitudes for each airmass.</param>
    /// <param name="high">Airmass of the higher place.</param>
    /// <param name="low">Airmass of the lower place.</param>
    /// <returns>A factor: 10^(0.8 k (X2 − X1)), Bouguer's law.</returns>
    public static double TimeFactor(double perAirmass, double high, double low) =>
        Math.Pow(10.0, 0.8 * perAirmass * (low - high));
}
