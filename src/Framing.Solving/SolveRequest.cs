using Framing.Sky;

namespace Framing.Solving;

/// <summary>What is known of a frame that is to be solved.</summary>
/// <param name="Detections">The stars found in it, in any order.</param>
/// <param name="Width">Its columns, 1 or more.</param>
/// <param name="Height">Its rows, 1 or more.</param>
public sealed record SolveRequest(IReadOnlyList<DetectedStar> Detections, int Width, int Height)
{
    /// <summary>The stars to match with; those of the embedded catalogue unless said otherwise.</summary>
    public ReferenceStars Stars { get; init; } = ReferenceStars.Embedded;

    /// <summary>When the frame was taken, as a Julian year: where the stars have moved to. 2000.0 where it is not known.</summary>
    /// <remarks>Without it, fast stars near the Sun stand arcseconds off and are left out or spoil residuals below a pixel.</remarks>
    public double JulianYear { get; init; } = 2000.0;

    /// <summary>Where the middle of the frame is, to within <see cref="NearFieldWidths"/>; null for anywhere on the sky.</summary>
    public SkyDirection? Near { get; init; }

    /// <summary>How far the middle may be from <see cref="Near"/>, in widths of the field.</summary>
    public double NearFieldWidths { get; init; } = 2.0;

    /// <summary>Sky per pixel, to within <see cref="ScaleTolerance"/>; null where it is not known.</summary>
    public Angle? Scale { get; init; }

    /// <summary>How far the scale may be off, as a share of it.</summary>
    public double ScaleTolerance { get; init; } = 0.03;

    /// <summary>Whether the whole sky is searched at any scale when nothing is found where place and scale were expected.</summary>
    public bool ElsewhereToo { get; init; }

    /// <summary>The narrowest field looked for where the scale is not known, along the longer side.</summary>
    public Angle LeastField { get; init; } = Angle.FromDegrees(1.0);

    /// <summary>The widest field looked for where the scale is not known, along the longer side.</summary>
    public Angle MostField { get; init; } = Angle.FromDegrees(30.0);

    internal bool HasHint => Near is not null || Scale is not null;
}
