namespace Framing.Plugins;

/// <summary>Leaves the camera as it stands: for a rig whose rings are better not touched.</summary>
[Strategy("keep-camera-angle", "Leave the camera at camera_angle_deg, where it stands now")]
public sealed class KeepCameraAngle : IRotationStrategy
{
    /// <summary>Answers the present camera angle.</summary>
    /// <param name="question">What is to be framed, and with what.</param>
    /// <returns>The present angle; a refusal when the plan does not give it.</returns>
    public RotationAnswer Choose(RotationQuestion question) =>
        question.PresentCameraAngle is { } angle
            ? RotationAnswer.Turn(angle, "the camera stays as it stands")
            : RotationAnswer.Refuse(
                "give camera_angle_deg in [rotation]: the position angle of the picture's up direction, from a solved frame"
            );
}
