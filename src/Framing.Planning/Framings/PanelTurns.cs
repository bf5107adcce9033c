using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Planning;

/// <summary>How far the camera has to turn at each panel to lie along the grid, and what that is good for.</summary>
/// <remarks>
/// A camera on an equatorial mount keeps its angle to the mount's pole, and north turns across the sky: towards the sides
/// of a mosaic the panels lie askew to its grid, by about the difference of right ascension times the sine of declination.
/// </remarks>
public sealed record PanelTurns
{
    /// <summary>
    /// For each panel, in the order of the panels, the turn from the angle that a camera left alone has there to the grid,
    /// -90° to +90°; plus turns the camera's body counter-clockwise as seen from behind it, looking along it at the sky.
    /// </summary>
    public required IReadOnlyList<Angle> ToGrid { get; init; }

    /// <summary>The largest of them, without its sign.</summary>
    public Angle Largest => ToGrid.Select(turn => turn.Magnitude).Aggregate(Angle.Max);

    /// <summary>The two neighbours that lose most overlap when the camera is left alone, by their numbers.</summary>
    public required PanelNumbers MostLost { get; init; }

    /// <summary>What these two share at least when the camera is left alone; negative where they part.</summary>
    public required Angle OverlapLeftAlone { get; init; }

    /// <summary>What they share at least when the camera is turned to the grid at each panel.</summary>
    public required Angle OverlapTurned { get; init; }

    /// <summary>True when turning gains overlap worth a word, and more than the error with which an angle is set can spoil.</summary>
    public required bool GainsOverlap { get; init; }

    /// <summary>
    /// True when the mosaic closes with the chance that is wanted, and holds the whole target, when the camera is left alone.
    /// </summary>
    public required bool ClosesLeftAlone { get; init; }

    /// <summary>True when turning is worth it: it gains overlap, and without it the plan is not met.</summary>
    public bool IsWorthIt => GainsOverlap && !ClosesLeftAlone;

    /// <summary>The turns of a mosaic; null of a single panel.</summary>
    /// <param name="request">What was asked.</param>
    /// <param name="overlap">What neighbours share.</param>
    /// <param name="fit">The grid.</param>
    /// <param name="coverage">What the mosaic covers as it is planned.</param>
    /// <param name="odds">How often it closes as it is planned.</param>
    internal static PanelTurns? Of(
        FramingRequest request,
        PanelOverlap overlap,
        GridFit fit,
        MosaicCoverage coverage,
        ClosingOdds odds
    )
    {
        var alone = LaidMosaic.Of(request with { TurnCameraAtEachPanel = false }, overlap, fit);
        var turned = LaidMosaic.Of(request with { TurnCameraAtEachPanel = true }, overlap, fit);
        var sides = NeighbourSides
            .Of(alone)
            .Zip(NeighbourSides.Of(turned), (one, other) => (Alone: one, Turned: other))
            .ToList();
        if (sides.Count == 0)
        {
            return null;
        }

        var worst = sides.MaxBy(side => side.Turned.LeastDepth - side.Alone.LeastDepth);
        Angle[] turns =
        [
            .. alone.Panels.Zip(
                turned.Panels,
                (one, other) =>
                    one.Pose.PositionAngle.FrameTurnTo(other.Pose.PositionAngle)
                    * (request.Rig.Mirrored ? -1.0 : 1.0)
            ),
        ];
        var gains =
            worst.Turned.LeastDepth - worst.Alone.LeastDepth > PlanWarnings.WorthSaying
            && turns.Max(turn => turn.Magnitude) > request.Errors.CameraAngleSigma;
        return new()
        {
            ToGrid = turns,
            MostLost = new(worst.Alone.First, worst.Alone.Second),
            OverlapLeftAlone = worst.Alone.LeastDepth,
            OverlapTurned = worst.Turned.LeastDepth,
            GainsOverlap = gains,
            ClosesLeftAlone = !request.TurnCameraAtEachPanel
                ? Closes(request, coverage, odds)
                : !gains
                    || Closes(
                        request,
                        CoverageMeasure.Of(alone, request.Target.Outline),
                        DrawnClosing.Odds(request, alone, part: 0.2)
                    ),
        };
    }

    private static bool Closes(FramingRequest request, MosaicCoverage coverage, ClosingOdds odds) =>
        ClosingWarnings.ClosesOftenEnough(request, odds)
        && coverage.TargetCoveredFraction > 1.0 - PlanWarnings.LeastFraction;
}
