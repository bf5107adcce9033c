namespace Framing.Plugins;

/// <summary>The angle at which the frame leaves the largest margin round the outline; with a free grid, of the fewest panels.</summary>
/// <remarks>
/// <para>
/// Usually not the angle that lies along the outline: an ellipse of 4.0° by 1.8° in a frame of 4.5° by 3.0° keeps 0.25° on
/// its tighter sides when the frame lies along it, and 0.37° on all four when it is turned by 22.5°.
/// </para>
/// <para>A camera that stands nearly as well already is left alone: a ring that is loosened shifts pointing and focus.</para>
/// </remarks>
[Strategy(
    "to-outline",
    "Turn to where the frame or mosaic leaves the largest margin round the outline"
)]
public sealed class ToOutline : IRotationStrategy
{
    /// <summary>The part of the panel's shorter side by which a margin has to grow to be worth a turn: 6 of 3,000 pixels.</summary>
    private const double WorthATurn = 0.002;

    /// <summary>Answers the exact best of all angles.</summary>
    /// <param name="question">What is to be framed, and with what.</param>
    /// <returns>The angle; of equally good ones the one nearest to the present camera angle.</returns>
    public RotationAnswer Choose(RotationQuestion question)
    {
        var fit = MosaicFit.LargestMargin(
            question.Outline,
            question.Rig.Field,
            question.Overlap,
            question.Grid,
            question.TangentMargin,
            question.MostPanels,
            question.PresentCameraAngle
        );
        if (question.PresentCameraAngle is { } now && IsNearlyAsGood(question, now, fit))
        {
            return RotationAnswer.Turn(
                now,
                "where the camera stands now; no turn leaves a margin worth the trouble"
            );
        }

        return RotationAnswer.Turn(
            fit.Frame.Pose.PositionAngle,
            question.Grid.IsFewest && fit.Panels > 1
                ? "the fewest panels, and of their angles the one with the largest margin"
                : "the largest margin round the outline"
        );
    }

    private static bool IsNearlyAsGood(RotationQuestion question, PositionAngle now, GridFit best)
    {
        var field = question.Rig.Field;
        var here = MosaicFit.AtAngle(
            question.Outline,
            field,
            question.Overlap,
            question.Grid,
            question.TangentMargin,
            question.MostPanels,
            now
        );
        var worth = WorthATurn * Math.Min(field.TangentWidth, field.TangentHeight);
        return here.Panels == best.Panels
            && here.TangentMargin > best.TangentMargin - worth
            && (here.HoldsMargin || !best.HoldsMargin);
    }
}
