namespace Framing.Rehearsal;

/// <summary>A lens or telescope as the frame maker plays it. Pixels are unbinned ones; corners are those of the sensor.</summary>
public sealed record LensModel
{
    /// <summary>Focal length in mm as it really is.</summary>
    public required double FocalLengthMillimetres { get; init; }

    /// <summary>What the header says of it; null for the truth.</summary>
    public double? NominalFocalLengthMillimetres { get; init; }

    /// <summary>Free diameter in mm.</summary>
    public required double ApertureMillimetres { get; init; }

    /// <summary>True when the light path has an odd number of mirrors.</summary>
    public bool Mirrored { get; init; }

    /// <summary>Full width at half maximum of its own blur in the middle of the field, pixels.</summary>
    public double BlurPx { get; init; } = 1.3;

    /// <summary>Blur by the curved field: full width at the corner, growing with the square of the distance.</summary>
    public double CurvaturePx { get; init; }

    /// <summary>Length of the coma's tail at the corner, pixels, pointing outwards; negative inwards.</summary>
    public double ComaPx { get; init; }

    /// <summary>How far the corner is moved by a distortion of the third order, pixels; positive outwards.</summary>
    public double DistortionPx { get; init; }

    /// <summary>How far the corner is moved by a tilt or a shifted lens: terms of the second order, pixels.</summary>
    public double TiltPx { get; init; }

    /// <summary>The share of light that the corner lacks, 0 to 1.</summary>
    public double Vignetting { get; init; } = 0.25;

    /// <summary>Radius of the disc of a star out of focus, pixels; 0 in focus.</summary>
    public double DefocusPx { get; init; }
}
