namespace Framing.TestPlugins;

[Strategy("asks-for-another-setting", "Reads a setting that it does not declare")]
public sealed class AsksForAnotherSetting : IRotationStrategy
{
    public RotationAnswer Choose(RotationQuestion question) =>
        RotationAnswer.Turn(
            PositionAngle.FromDegrees(question.Settings.Number("angle_deg")),
            "as set"
        );
}
