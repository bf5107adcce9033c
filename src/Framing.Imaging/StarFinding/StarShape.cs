namespace Framing.Imaging;

/// <summary>What a measurement under a bell-shaped window gives of a peak; places from 0 in the plane.</summary>
internal readonly record struct StarShape
{
    public double X { get; init; }

    public double Y { get; init; }

    /// <summary>Sum of the light under the window.</summary>
    public double Light { get; init; }

    /// <summary>The window's sigma.</summary>
    public double Window { get; init; }

    /// <summary>The star's own sigma: geometric mean over both axes.</summary>
    public double Sigma { get; init; }

    public double Elongation { get; init; }

    /// <summary>Direction of the long axis in radians from +x to +y, 0 up to pi.</summary>
    public double Direction { get; init; }

    public double SignalToNoise { get; init; }

    public double Background { get; init; }

    public double Noise { get; init; }

    /// <summary>The brightest sample within a pixel of the middle, above the background.</summary>
    public double Peak { get; init; }

    public double Width => Sigma * WidthOverSigma;

    public const double WidthOverSigma = 2.354820045;
}
