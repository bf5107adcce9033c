using Framing.Mosaics;

namespace Framing.Planning;

/// <summary>Holds a plan of panels that follow the outline against the full rectangle.</summary>
/// <remarks>
/// A camera left alone lies askew to the grid away from the middle, the more the nearer to the pole. Panels in bands that
/// are set off against each other lose more by that than those of a rectangle, whose columns keep one right ascension. So
/// the bands are taken only where they save panels and close as often, and hold as much of the outline, as the rectangle.
/// </remarks>
internal static class AdaptedChoice
{
    /// <summary>Standard errors of both drawn chances together that may be missing.</summary>
    private const double Grace = 3.0;

    /// <summary>True where a plan of bands has to be held against a rectangle.</summary>
    public static bool IsNeeded(FramingRequest request) =>
        request.Grid.IsAdapted && !request.TurnCameraAtEachPanel && request.FixedCentre is null;

    /// <summary>The plan with the fewest panels of those that close and cover no worse than the rectangle.</summary>
    /// <param name="request">What was asked.</param>
    /// <param name="adapted">The plan of bands.</param>
    public static FramedPlan Of(FramingRequest request, FramedPlan adapted)
    {
        if (
            FramingStep.Settled(request with { Grid = GridWish.Fewest }).Plan is not { } full
            || full.Odds is null
        )
        {
            return adapted;
        }

        if (IsAsGood(adapted, full))
        {
            return adapted;
        }

        var there = FramingStep.Like(full, request);
        var best = (IsAsGood(there, full) ? there : full) with { Request = request };
        return adapted.PanelCount < best.PanelCount
            ? best with
            {
                Warnings =
                [
                    .. best.Warnings,
                    FormattableString.Invariant(
                        $"{adapted.PanelCount} panels in bands would follow the outline, but with the camera left alone they close or cover it less surely. Set turn_camera_at_each_panel = true to save {best.PanelCount - adapted.PanelCount} panels."
                    ),
                ],
            }
            : best;
    }

    private static bool IsAsGood(FramedPlan plan, FramedPlan full)
    {
        if (
            plan is not { Odds: { } odds, Coverage: { } coverage }
            || plan.PanelCount > full.PanelCount
        )
        {
            return false;
        }

        var (one, other) = (odds.ChanceNoGap, full.Odds!.ChanceNoGap);
        var spread = Math.Sqrt(
            (one * (1.0 - one) / odds.Trials) + (other * (1.0 - other) / full.Odds.Trials)
        );
        return one >= other - (Grace * spread)
            && coverage.TargetCoveredFraction
                >= full.Coverage!.TargetCoveredFraction - PlanWarnings.LeastFraction
            && coverage.GapArea.SquareArcminutes
                <= full.Coverage.GapArea.SquareArcminutes + PlanWarnings.LeastGapArcminutes;
    }
}
