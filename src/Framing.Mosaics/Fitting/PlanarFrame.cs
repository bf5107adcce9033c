using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>A frame laid over points of one tangent plane.</summary>
/// <param name="Width">Width of the frame, a tangent.</param>
/// <param name="Height">Height of the frame, a tangent.</param>
/// <param name="Angle">
/// Direction of the frame's width in the plane, from +xi (east) towards +eta (north), 0 to less than 180°. The position
/// angle of the frame's up direction is minus this, modulo 180°.
/// </param>
/// <param name="Centre">The middle of the frame, which is the middle of the points both ways.</param>
/// <param name="NeededWidth">What the points take up along the width.</param>
/// <param name="NeededHeight">What the points take up along the height.</param>
public readonly record struct PlanarFrame(
    double Width,
    double Height,
    Angle Angle,
    PlanePoint Centre,
    double NeededWidth,
    double NeededHeight
)
{
    /// <summary>
    /// What is left on the tighter pair of sides, a tangent; negative when the frame is too small, and by how much.
    /// </summary>
    public double Margin => Math.Min(Width - NeededWidth, Height - NeededHeight) / 2.0;

    /// <summary>How large a frame of the same shape has to be, as a multiple of this one: above 1 it is too small.</summary>
    public double Scale => Math.Max(NeededWidth / Width, NeededHeight / Height);
}
