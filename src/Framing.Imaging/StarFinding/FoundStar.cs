using Framing.Sky;

namespace Framing.Imaging;

/// <summary>A star as a frame shows it.</summary>
/// <param name="Position">The middle of its light, in pixels of the file (those before any averaging), as FITS counts.</param>
/// <param name="Flux">
/// Its light above the background, in the file's numbers summed over pixels; too little for a saturated star, whose top
/// is cut off.
/// </param>
/// <remarks>Of a frame with a colour filter over its pixels the flux is a mean over the colours, as a pixel would hold.</remarks>
public readonly record struct FoundStar(PixelPosition Position, double Flux)
{
    /// <summary>Light over noise, both weighted with the star's own shape; a star is told from noise from about 5 on.</summary>
    public double SignalToNoise { get; init; }

    /// <summary>The brightest pixel near its middle above the background, in the file's numbers.</summary>
    public double Peak { get; init; }

    /// <summary>Full width at half maximum in pixels of the file, the geometric mean over both axes; rough where S/N is below 10.</summary>
    public double WidthPx { get; init; }

    /// <summary>Long axis over short axis, 1 or more; rough where S/N is below 20.</summary>
    public double Elongation { get; init; }

    /// <summary>Direction of the long axis, from the file's +x towards its +y, 0 up to but not 180°.</summary>
    public Angle ElongationDirection { get; init; }

    /// <summary>The expected error of the position along one axis, 1 sigma in pixels: noise, and 0.02 px for all else.</summary>
    public double PositionErrorPx { get; init; }

    /// <summary>True when its top is cut off: its flux is too small, its place a little less sure.</summary>
    public bool IsSaturated { get; init; }

    /// <summary>True when another star, at least a tenth as bright, stands within two widths: place and flux are drawn towards it.</summary>
    public bool IsBlended { get; init; }
}
