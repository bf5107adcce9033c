namespace Framing.Plugins;

/// <summary>Neighbours share a fixed part of the panel.</summary>
[Strategy("fraction", "Share a fixed part of the panel on each shared side")]
[StrategySetting(
    "overlap_fraction",
    SettingKind.Number,
    "shared part of the panel's width and height; 0.15 is 15 %",
    Default = "0.15",
    Least = 0.0,
    Below = 1.0
)]
public sealed class Fraction : IOverlapStrategy
{
    /// <summary>Answers the same part of the width and of the height.</summary>
    /// <param name="question">What is to be framed, and with what.</param>
    /// <returns>The overlap.</returns>
    public OverlapAnswer Choose(OverlapQuestion question)
    {
        var part = question.Settings.Number("overlap_fraction");
        var field = question.Rig.Field;
        return OverlapAnswer.Share(
            new(part * field.TangentWidth, part * field.TangentHeight),
            FormattableString.Invariant($"{part * 100.0:0.#} % of the panel")
        );
    }
}
