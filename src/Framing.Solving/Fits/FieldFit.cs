using Framing.Sky;

namespace Framing.Solving;

/// <summary>A frame fitted to the stars it shows.</summary>
/// <param name="Linear">World coordinates without the distortion; the reference pixel is the middle of the frame.</param>
/// <param name="Distortion">The distortion; null when there is none.</param>
/// <param name="Model">What the fit could bend.</param>
/// <param name="Used">Which of the given matches it rests on, rising.</param>
/// <param name="Rejected">Which it left out as too far off, rising.</param>
/// <param name="RmsPixels">Residual of the used stars along one axis, with the degrees of freedom taken into account.</param>
/// <param name="LargestPixels">The largest residual of a used star.</param>
/// <param name="Precision">How well it knows where the frame points.</param>
public sealed record FieldFit(
    TanWorldCoordinates Linear,
    SipDistortion? Distortion,
    FitModel Model,
    IReadOnlyList<int> Used,
    IReadOnlyList<int> Rejected,
    double RmsPixels,
    double LargestPixels,
    FieldPrecision Precision
)
{
    /// <summary>Residual of the used stars along one axis, on the sky.</summary>
    public Angle Rms => Linear.Matrix.Scale * RmsPixels;

    /// <summary>Where the frame lies on the sky, distortion and all.</summary>
    public WorldCoordinates Coordinates { get; } =
        Distortion is null
            ? Linear
            : ProjectedWorldCoordinates.TanSip(
                Linear.ReferencePixel,
                Linear.ReferenceDirection,
                Linear.Matrix,
                Distortion
            );
}
