using Framing.Sky;

namespace Framing.Planning;

/// <summary>A frame as its solution shows it.</summary>
/// <param name="Pose">Where it looks and the position angle of the displayed picture's up direction, J2000.</param>
/// <param name="Field">Its field, whole frame.</param>
/// <param name="Mirrored">True when the displayed picture is a mirror image of the sky.</param>
/// <param name="At">When it was taken, UTC.</param>
public sealed record SeenFrame(CameraPose Pose, FieldShape Field, bool Mirrored, DateTime At)
{
    /// <summary>Outer corners, J2000: top-left, top-right, bottom-right, bottom-left as displayed.</summary>
    public IReadOnlyList<SkyDirection> Corners => Field.Corners(Pose, Mirrored);
}
