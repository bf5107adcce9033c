using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>A frame laid over an outline on the sky.</summary>
/// <param name="Pose">Where the camera looks and how it is turned.</param>
/// <param name="Field">The frame: one panel, or a whole mosaic as one large frame.</param>
/// <param name="NeededWidth">
/// What the outline takes up along the width about the frame's centre, a tangent in the frame's own plane.
/// </param>
/// <param name="NeededHeight">What the outline takes up along the height, a tangent.</param>
/// <remarks>
/// <para>
/// A frame turned by 180° covers the same sky; <see cref="Pose"/> is the one of the two that is nearer to the camera's
/// present angle, and where that is not known the one from 0 to less than 180°.
/// </para>
/// <para>A mirrored picture covers the same sky as an unmirrored one: nothing here depends on it.</para>
/// </remarks>
public readonly record struct FittedFrame(
    CameraPose Pose,
    FieldShape Field,
    double NeededWidth,
    double NeededHeight
)
{
    /// <summary>The other position angle of the picture's up direction at which the frame covers the same sky.</summary>
    public PositionAngle Alternative => Pose.PositionAngle.Opposite;

    /// <summary>What is left at the left and at the right, a tangent; negative where the outline does not fit.</summary>
    public double MarginAlongWidth => (Field.TangentWidth - NeededWidth) / 2.0;

    /// <summary>What is left above and below, a tangent; negative where the outline does not fit.</summary>
    public double MarginAlongHeight => (Field.TangentHeight - NeededHeight) / 2.0;

    /// <summary>What is left on the tighter pair of sides, a tangent; negative when the outline does not fit, by how much.</summary>
    public double TangentMargin => Math.Min(MarginAlongWidth, MarginAlongHeight);

    /// <summary>How large a frame of the same shape has to be, as a multiple of this one: above 1 it is too small.</summary>
    public double Scale =>
        Math.Max(NeededWidth / Field.TangentWidth, NeededHeight / Field.TangentHeight);
}
