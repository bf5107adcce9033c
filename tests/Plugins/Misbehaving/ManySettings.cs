namespace Framing.TestPlugins;

[Strategy("many-settings", "Says its settings back, one of each kind")]
[StrategySetting("plain", SettingKind.Number, "any number")]
[StrategySetting(
    "least_deg",
    SettingKind.Number,
    "a number with a floor",
    Least = -5.0,
    Default = "0"
)]
[StrategySetting(
    "most_deg",
    SettingKind.Number,
    "a number with a ceiling",
    Most = 5.0,
    Default = "1e0"
)]
[StrategySetting(
    "both_deg",
    SettingKind.Number,
    "a number between",
    Least = 1.0,
    Most = 2.5,
    Default = "2"
)]
[StrategySetting("below", SettingKind.Number, "a number below", Below = 3.0, Default = "2.5")]
[StrategySetting("side", SettingKind.Text, "which side", Choices = "long|short", Default = "long")]
[StrategySetting("label", SettingKind.Text, "any text", Default = "")]
[StrategySetting("turn", SettingKind.Flag, "whether to turn", Default = "true")]
public sealed class ManySettings : IRotationStrategy
{
    public RotationAnswer Choose(RotationQuestion question)
    {
        var s = question.Settings;
        return RotationAnswer.Refuse(
            FormattableString.Invariant(
                $"{s.Number("plain")} {s.Number("least_deg")} {s.Number("most_deg")} {s.Number("both_deg")} {s.Number("below")} {s.Text("side")} [{s.Text("label")}] {s.Flag("turn")}"
            )
        );
    }
}
