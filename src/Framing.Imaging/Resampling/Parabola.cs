namespace Framing.Imaging;

/// <summary>Start + slope · k + bend · k².</summary>
/// <param name="Start">The value at 0.</param>
/// <param name="Slope">The derivative at 0.</param>
/// <param name="Bend">Half the second derivative.</param>
internal readonly record struct Parabola(double Start, double Slope, double Bend)
{
    /// <summary>The value at k.</summary>
    public double At(int k) => Start + (k * (Slope + (k * Bend)));
}
