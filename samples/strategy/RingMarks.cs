using Framing.Sky;
using Framing.Strategies;

namespace Rings;

// A strategy is a public class with a constructor without parameters. It implements one question: IRotationStrategy (at
// which angle does the camera stand) or IOverlapStrategy (how much sky do neighbouring panels share).
//
// This one knows that the ring between lens and camera has marks every few degrees, and that in the dark a mark is found
// by touch while 37.2 degrees are not. Of the marks it takes the one that needs the fewest panels, and of those the one
// that leaves the widest margin.

/// <summary>Turns the camera to a mark of the ring.</summary>
/// <remarks>
/// The two attributes are all that "framing strategies" reads; no code runs before the strategy is chosen. In a plan:
/// <code>
/// [rotation]
/// strategy = "ring-marks"
/// ring_step_deg = 10
/// </code>
/// </remarks>
[Strategy(
    "ring-marks",
    "Turn to the mark of the ring that needs the fewest panels, then leaves the widest margin"
)]
[StrategySetting(
    "ring_step_deg",
    SettingKind.Number,
    "degrees between two marks of the ring",
    Default = "15", // written as it would stand in the plan; leave it out and the setting is required
    Least = 1.0, // the program refuses what is out of range before this class is asked
    Most = 90.0
)]
[StrategySetting(
    "first_mark_deg",
    SettingKind.Number,
    "position angle of the picture's up direction at any one mark, from a solved frame",
    Default = "0"
)]
public sealed class RingMarks : IRotationStrategy
{
    /// <summary>Answers the best of the marks.</summary>
    /// <param name="question">The outline, the rig, the margin wanted, the settings, and what may be asked back.</param>
    /// <returns>The mark's angle with a reason, or a refusal in words when no mark will do.</returns>
    public RotationAnswer Choose(RotationQuestion question)
    {
        var step = question.Settings.Number("ring_step_deg");
        var first = PositionAngle.FromDegrees(question.Settings.Number("first_mark_deg"));

        // A frame turned by 180 degrees covers the same sky, so the marks of half a turn are enough.
        PositionAngle? best = null;
        PanelCount bestCount = default;
        for (var turn = 0.0; turn < 180.0; turn += step)
        {
            var mark = first.TurnedBy(Angle.FromDegrees(turn));

            // The program answers such questions itself, with the overlap and the grid of the plan.
            var count = question.Aids.Panels.At(mark);
            if (best is null || IsBetter(count, bestCount))
            {
                (best, bestCount) = (mark, count);
            }
        }

        // A refusal is an answer, too: say what is missing and what would be right.
        if (best is null || bestCount.Panels > question.MostPanels)
        {
            return RotationAnswer.Refuse(
                FormattableString.Invariant(
                    $"at no mark of the ring are {question.MostPanels} panels enough; raise most_panels"
                )
            );
        }

        // ... and of the two opposite angles the one that needs the smaller turn is the one to name.
        return RotationAnswer.Turn(
            best.Value.FrameNear(question.PresentCameraAngle),
            "the best of the ring's marks"
        );
    }

    private static bool IsBetter(PanelCount count, PanelCount other) =>
        count.Panels < other.Panels
        || (count.Panels == other.Panels && count.TangentMargin > other.TangentMargin);
}
