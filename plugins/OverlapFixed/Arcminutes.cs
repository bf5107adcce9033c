namespace Framing.Plugins;

/// <summary>Neighbours share a strip of fixed width.</summary>
[Strategy("arcminutes", "Share a strip of fixed width on each shared side")]
[StrategySetting(
    "overlap_arcmin",
    SettingKind.Number,
    "width of the shared strip in minutes of arc at the middle of the mosaic",
    Least = 0.0
)]
public sealed class Arcminutes : IOverlapStrategy
{
    /// <summary>Answers the same strip for neighbours side by side and one above the other.</summary>
    /// <param name="question">What is to be framed, and with what.</param>
    /// <returns>The overlap; a refusal when the strip is as wide as the panel.</returns>
    public OverlapAnswer Choose(OverlapQuestion question)
    {
        var arcminutes = question.Settings.Number("overlap_arcmin");
        var strip = Angle.FromArcminutes(arcminutes).Radians;
        var field = question.Rig.Field;
        var shortSide = Math.Min(field.TangentWidth, field.TangentHeight);
        return strip < shortSide
            ? OverlapAnswer.Share(
                new(strip, strip),
                FormattableString.Invariant($"a strip of {arcminutes:0.#} arcmin")
            )
            : OverlapAnswer.Refuse(
                FormattableString.Invariant(
                    $"overlap_arcmin = {arcminutes:0.#} is as wide as the panel; give less than {Angle.FromRadians(shortSide).Arcminutes:0.#}"
                )
            );
    }
}
