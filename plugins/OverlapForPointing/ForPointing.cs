namespace Framing.Plugins;

/// <summary>Neighbours share just enough that the mosaic closes with the chance that the plan wants.</summary>
/// <remarks>
/// The closed form gives both strips at which each pair of two neighbours is as likely to close as the other; both are then
/// made wider or narrower together until the whole mosaic, as it stands on the sky, reaches the chance.
/// </remarks>
[Strategy(
    "for-pointing",
    "Share as little as the mount's pointing allows for the chance of no gap"
)]
[StrategySetting(
    "least_overlap_arcmin",
    SettingKind.Number,
    "never less than this, in minutes of arc at the middle of the mosaic",
    Default = "1",
    Least = 0.0
)]
[StrategySetting(
    "most_overlap_fraction",
    SettingKind.Number,
    "refuse when more than this part of the panel would be needed; 0.5 is 50 %",
    Default = "0.5",
    Least = 0.01,
    Most = 0.9
)]
public sealed class ForPointing : IOverlapStrategy
{
    /// <summary>Halvings after the limits are found: the strips are then good to 0.1 % of their width.</summary>
    private const int Halvings = 9;

    /// <summary>Answers the smallest overlap that reaches the wanted chance of no gap.</summary>
    /// <param name="question">What is to be framed, and with what.</param>
    /// <returns>The overlap; a refusal when the panel is too small for such errors.</returns>
    public OverlapAnswer Choose(OverlapQuestion question)
    {
        var field = question.Rig.Field;
        var least = Angle.FromArcminutes(question.Settings.Number("least_overlap_arcmin")).Radians;
        var most = question.Settings.Number("most_overlap_fraction");
        var start = new PanelOverlap(
            GapChance.SmallestOverlap(question.ChanceWanted, field.TangentHeight, question.Errors),
            GapChance.SmallestOverlap(question.ChanceWanted, field.TangentWidth, question.Errors)
        );
        // Without any error there is nothing to scale, and a camera left alone may still need some room.
        var unit = new PanelOverlap(
            Math.Max(start.AlongWidth, 1e-4),
            Math.Max(start.AlongHeight, 1e-4)
        );
        double low = 0.0,
            high = 1.0;
        while (
            Wider(high, unit, least) is var tried
            && !(Fits(tried, field, most) && Reaches(question, tried))
        )
        {
            if (!Fits(tried, field, most))
            {
                // The widest that is allowed, then nothing.
                var widest = Math.Min(
                    most * field.TangentWidth / unit.AlongWidth,
                    most * field.TangentHeight / unit.AlongHeight
                );
                if (widest <= low || !Reaches(question, Wider(widest, unit, least)))
                {
                    return Refusal(question, most);
                }

                high = widest;
                break;
            }

            low = high;
            high *= 1.4;
        }

        // Where the first strips reach it already, the least may do.
        if (low <= 0.0 && Reaches(question, Wider(0.0, unit, least)))
        {
            return Answer(question, Wider(0.0, unit, least));
        }

        for (var round = 0; round < Halvings; round++)
        {
            var middle = (low + high) / 2.0;
            if (Reaches(question, Wider(middle, unit, least)))
            {
                high = middle;
            }
            else
            {
                low = middle;
            }
        }

        return Answer(question, Wider(high, unit, least));
    }

    private static PanelOverlap Wider(double factor, PanelOverlap overlap, double least) =>
        new(
            Math.Max(least, factor * overlap.AlongWidth),
            Math.Max(least, factor * overlap.AlongHeight)
        );

    private static bool Fits(PanelOverlap overlap, FieldShape field, double most) =>
        overlap.AlongWidth <= most * field.TangentWidth * (1.0 + 1e-12)
        && overlap.AlongHeight <= most * field.TangentHeight * (1.0 + 1e-12);

    private static bool Reaches(OverlapQuestion question, PanelOverlap overlap) =>
        question.Aids.Gaps.NoGap(overlap) >= question.ChanceWanted;

    private static OverlapAnswer Answer(OverlapQuestion question, PanelOverlap overlap) =>
        OverlapAnswer.Share(
            overlap,
            FormattableString.Invariant(
                $"closed {question.ChanceWanted * 100.0:0.##} times in 100 with a pointing error of {question.Errors.PointingSigma.Arcminutes:0.#} arcmin and {question.Errors.CameraAngleSigma.Degrees:0.##} deg of camera angle"
            )
        );

    private static OverlapAnswer Refusal(OverlapQuestion question, double most) =>
        OverlapAnswer.Refuse(
            FormattableString.Invariant(
                $"a chance of no gap of {question.ChanceWanted:0.####} needs panels to share more than {most * 100.0:0.#} %, with a pointing error of {question.Errors.PointingSigma.Arcminutes:0.#} arcmin; check each panel with a test frame, turn the camera at each panel, or lower chance_no_gap"
            )
        );
}
