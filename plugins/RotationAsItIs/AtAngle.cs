namespace Framing.Plugins;

/// <summary>The angle that the plan gives: for a framing that was chosen by eye.</summary>
[Strategy("at-angle", "Turn the camera to the angle that you give")]
[StrategySetting(
    "angle_deg",
    SettingKind.Number,
    "position angle of the displayed picture's up direction in degrees, north through east",
    Least = 0.0,
    Below = 360.0
)]
public sealed class AtAngle : IRotationStrategy
{
    /// <summary>Answers the angle of the plan.</summary>
    /// <param name="question">What is to be framed, and with what.</param>
    /// <returns>The angle, as given: half a turn more shows the same sky, upside down.</returns>
    public RotationAnswer Choose(RotationQuestion question) =>
        RotationAnswer.Turn(
            PositionAngle.FromDegrees(question.Settings.Number("angle_deg")),
            "the angle that the plan gives"
        );
}
