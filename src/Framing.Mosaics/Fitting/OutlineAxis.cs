using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>The narrowest strip that holds an outline: which way the outline runs.</summary>
/// <param name="Centre">The middle of the outline along and across the strip.</param>
/// <param name="Along">Position angle of the strip at its centre; the opposite direction is the same strip.</param>
/// <param name="Length">What the outline takes up along the strip, a tangent.</param>
/// <param name="Breadth">What it takes up across, a tangent.</param>
public readonly record struct OutlineAxis(
    SkyDirection Centre,
    PositionAngle Along,
    double Length,
    double Breadth
)
{
    /// <summary>The camera angle that lays the longer side of a frame along the outline.</summary>
    /// <param name="field">The frame; of a square one the width is laid along.</param>
    /// <param name="present">Where the camera stands now, if known.</param>
    /// <returns>
    /// Position angle of the picture's up direction; of the two that differ by 180° the one nearer to the present one, else
    /// the one from 0 to less than 180°.
    /// </returns>
    public PositionAngle CameraAngle(FieldShape field, PositionAngle? present = null)
    {
        var up =
            field.TangentWidth >= field.TangentHeight
                ? Along.TurnedBy(Angle.FromDegrees(90.0))
                : Along;
        return OutlineFit.Reported(up, present);
    }
}
