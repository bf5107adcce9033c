using Framing.Sky;

namespace Framing.Solving;

/// <summary>How well a fit knows where a frame points: one standard deviation each.</summary>
/// <param name="Centre">Of the direction of the frame's middle, along each axis.</param>
/// <param name="RelativeScale">Of the scale, as a share of it.</param>
/// <param name="Angle">Of the position angle.</param>
public readonly record struct FieldPrecision(Angle Centre, double RelativeScale, Angle Angle)
{
    /// <summary>What is to be expected of stars spread evenly over a frame.</summary>
    /// <param name="stars">How many stars, 1 or more.</param>
    /// <param name="sigmaPixels">Error of one star along each axis, in pixels.</param>
    /// <param name="width">Columns of the frame.</param>
    /// <param name="height">Rows of the frame.</param>
    /// <param name="scale">Sky per pixel.</param>
    /// <returns>σ/√N for the centre; σ/(2√N) · √(12/w² + 12/h²) for scale and angle.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No star, or a size of zero.</exception>
    public static FieldPrecision Expected(
        int stars,
        double sigmaPixels,
        int width,
        int height,
        Angle scale
    )
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(stars, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(height, 1);
        var root = Math.Sqrt(stars);
        var turn =
            sigmaPixels
            / (2.0 * root)
            * Math.Sqrt((12.0 / ((double)width * width)) + (12.0 / ((double)height * height)));
        return new(scale * (sigmaPixels / root), turn, Framing.Sky.Angle.FromRadians(turn));
    }
}
