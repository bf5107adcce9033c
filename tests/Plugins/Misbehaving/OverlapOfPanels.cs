namespace Framing.TestPlugins;

[Strategy("overlap-of-panels", "Shares a number of panels, sensible or not")]
[StrategySetting("wide_panels", SettingKind.Number, "shared part of the width")]
[StrategySetting("high_panels", SettingKind.Number, "shared part of the height", Default = "0.1")]
public sealed class OverlapOfPanels : IOverlapStrategy
{
    public OverlapAnswer Choose(OverlapQuestion question)
    {
        // Not even a number comes from the square root of a negative one.
        var high = question.Settings.Number("high_panels");
        var part = high < -1.0 ? Math.Sqrt(high) : high;
        return OverlapAnswer.Share(
            new(
                question.Settings.Number("wide_panels") * question.Rig.Field.TangentWidth,
                part * question.Rig.Field.TangentHeight
            ),
            "as the plan says"
        );
    }
}
