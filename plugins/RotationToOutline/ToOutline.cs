namespace Framing.Plugins;

/// <summary>The angle at which the frame leaves the largest margin round the outline; with a free grid, of the fewest panels.</summary>
/// <remarks>
/// Usually not the angle that lies along the outline: an ellipse of 4.0° by 1.8° in a frame of 4.5° by 3.0° keeps 0.25° on
/// its tighter sides when the frame lies along it, and 0.37° on all four when it is turned by 22.5°.
/// </remarks>
[Strategy(
    "to-outline",
    "Turn to where the frame or mosaic leaves the largest margin round the outline"
)]
public sealed class ToOutline : IRotationStrategy
{
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
        return RotationAnswer.Turn(
            fit.Frame.Pose.PositionAngle,
            question.Grid.IsFewest && fit.Panels > 1
                ? "the fewest panels, and of their angles the one with the largest margin"
                : "the largest margin round the outline"
        );
    }
}
