namespace Framing.Plugins;

/// <summary>The angle that needs the fewest panels; of several the one with the largest margin.</summary>
[Strategy(
    "fewest-panels",
    "Turn to where the fewest panels hold the outline, then to the largest margin"
)]
public sealed class FewestPanels : IRotationStrategy
{
    /// <summary>Answers the angle of the smallest of all rectangular grids.</summary>
    /// <param name="question">What is to be framed, and with what.</param>
    /// <returns>The angle; a refusal when the plan fixes the grid.</returns>
    public RotationAnswer Choose(RotationQuestion question)
    {
        if (!question.Grid.IsFewest)
        {
            return RotationAnswer.Refuse(
                FormattableString.Invariant(
                    $"it needs grid = \"fewest\" in [mosaic], not [{question.Grid.Columns}, {question.Grid.Rows}]; with a fixed grid take to-outline"
                )
            );
        }

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
            fit.Panels == 1
                ? "one panel is enough, with the largest margin"
                : FormattableString.Invariant(
                    $"no angle needs fewer than {fit.Panels} panels; of those, the largest margin"
                )
        );
    }
}
