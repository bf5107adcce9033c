namespace Framing.TestPlugins;

[Strategy("without-reason", "Turns without a word, refuses without a word")]
[StrategySetting("refuse", SettingKind.Flag, "whether to refuse", Default = "false")]
public sealed class WithoutReason : IRotationStrategy, IOverlapStrategy
{
    public RotationAnswer Choose(RotationQuestion question) =>
        question.Settings.Flag("refuse")
            ? RotationAnswer.Refuse(null!)
            : RotationAnswer.Turn(PositionAngle.East, null!);

    public OverlapAnswer Choose(OverlapQuestion question) =>
        question.Settings.Flag("refuse")
            ? OverlapAnswer.Refuse("  first\r\n\tsecond\u0007 ")
            : OverlapAnswer.Share(new(0.0, 0.0), "");
}
