using Framing.Mosaics;
using Framing.Sky;
using Framing.Strategies;

namespace Framing.Planning;

/// <summary>Works out a framing: camera angle, grid, panels, coordinates, coverage.</summary>
/// <remarks>
/// A pure function: the same request gives the same answer. The overlap can hang on the angle and the angle on the
/// overlap, so both strategies are asked in turn until neither changes its mind, at most <see cref="MostRounds"/> times.
/// </remarks>
public static class FramingStep
{
    /// <summary>The most often that the strategies are asked in turn.</summary>
    public const int MostRounds = 6;

    /// <summary>Works out a framing.</summary>
    /// <param name="request">Everything that it depends on.</param>
    /// <returns>The framing, or a strategy's refusal.</returns>
    public static FramingOutcome Frame(FramingRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        var outcome = Settled(request);
        return AdaptedChoice.IsNeeded(request) && outcome.Plan is { } adapted
            ? FramingOutcome.Of(AdaptedChoice.Of(request, adapted))
            : outcome;
    }

    /// <summary>Asks both strategies in turn until neither changes its mind.</summary>
    internal static FramingOutcome Settled(FramingRequest request)
    {
        var wanted = request.WantedTangentMargin;
        var angle = request.PresentCameraAngle ?? PositionAngle.North;
        var rotationReason = string.Empty;
        var centre = CentreAt(request, angle);
        var overlap = default(PanelOverlap);
        for (var round = 0; ; round++)
        {
            // The first answer only gives the rotation a start: its angle is a guess.
            var roughly = round == 0;
            var shared = request.Overlap.Strategy.Choose(
                OverlapQuestion(request, new(centre, angle), roughly)
            );
            if (shared.Overlap is null && !roughly)
            {
                return FramingOutcome.Refused(request.Overlap.Name, shared.Reason);
            }

            var nextOverlap = shared.Overlap ?? default;
            if (round > 0 && (round == MostRounds || nextOverlap == overlap))
            {
                var fit = GridAtAngle.Of(request, overlap, angle);
                return FramingOutcome.Of(
                    Finished(request, fit, wanted, overlap, rotationReason, shared.Reason)
                );
            }

            overlap = nextOverlap;
            var turned = request.Rotation.Strategy.Choose(
                RotationQuestion(request, wanted, overlap)
            );
            if (turned.Angle is not { } nextAngle)
            {
                return FramingOutcome.Refused(request.Rotation.Name, turned.Reason);
            }

            rotationReason = turned.Reason;
            if (nextAngle == angle && !roughly)
            {
                // The overlap strategy would be asked the same again, and answer the same.
                return FramingOutcome.Of(
                    Finished(
                        request,
                        GridAtAngle.Of(request, overlap, angle),
                        wanted,
                        overlap,
                        rotationReason,
                        shared.Reason
                    )
                );
            }

            angle = nextAngle;
            centre = CentreAt(request, angle);
        }
    }

    private static SkyDirection CentreAt(FramingRequest request, PositionAngle angle) =>
        request.FixedCentre
        ?? OutlineFit.AtAngle(request.Target.Outline, request.Rig.Field, angle).Pose.Centre;

    private static OverlapQuestion OverlapQuestion(
        FramingRequest request,
        CameraPose pose,
        bool roughly
    ) =>
        new()
        {
            Outline = request.Target.Outline,
            Rig = request.Rig,
            Pose = pose,
            Grid = request.Grid,
            Errors = request.Errors,
            ChanceWanted = request.ChanceNoGap,
            Settings = request.Overlap.Settings,
            Aids = Aids(request, default, pose.PositionAngle, roughly),
        };

    private static RotationQuestion RotationQuestion(
        FramingRequest request,
        double wanted,
        PanelOverlap overlap
    ) =>
        new()
        {
            Outline = request.Target.Outline,
            Rig = request.Rig,
            TangentMargin = wanted,
            PresentCameraAngle = request.PresentCameraAngle,
            Grid = request.Grid,
            MostPanels = request.MostPanels,
            Overlap = overlap,
            Settings = request.Rotation.Settings,
            Aids = Aids(
                request,
                overlap,
                request.PresentCameraAngle ?? PositionAngle.North,
                roughly: false
            ),
        };

    private static StrategyAids Aids(
        FramingRequest request,
        PanelOverlap overlap,
        PositionAngle angle,
        bool roughly
    ) =>
        new()
        {
            Panels = new PanelCountAid(request, overlap),
            Gaps = new GapChanceAid(request, angle, roughly),
            Stars = request.Stars,
            SharedStars = new SharedStarsAid(request, angle),
        };

    /// <summary>The framing of a grid at the angle and the overlap of another plan.</summary>
    internal static FramedPlan Like(FramedPlan plan, FramingRequest request) =>
        Finished(
            request,
            GridAtAngle.Of(request, plan.Overlap, plan.Pose.PositionAngle),
            request.WantedTangentMargin,
            plan.Overlap,
            plan.RotationReason,
            plan.OverlapReason
        );

    private static FramedPlan Finished(
        FramingRequest request,
        GridFit fit,
        double wanted,
        PanelOverlap overlap,
        string rotationReason,
        string overlapReason
    )
    {
        var pose = fit.Frame.Pose;
        var impossible = fit.WithinMostPanels
            ? null
            : FormattableString.Invariant(
                $"At this angle it takes {fit.Panels} panels to hold {request.Target.Name}{(fit.Places is null ? FormattableString.Invariant($", {fit.Columns} × {fit.Rows}") : string.Empty)}; the plan allows {request.MostPanels}. Raise most_panels, take a shorter lens, or frame less of it."
            );
        IReadOnlyList<PlannedPanel> panels = [];
        MosaicCoverage? coverage = null;
        ClosingOdds? odds = null;
        PanelTurns? turns = null;
        ShootingRoute? route = null;
        IReadOnlyList<IReadOnlyList<SkyDirection>> thin = [];
        var frame = OfDateFrame.At(TerrestrialTime.FromUtc(request.At));
        if (fit.WithinMostPanels)
        {
            var mosaic = LaidMosaic.Of(request, overlap, fit);

            // Two cores, two questions.
            var drawn = Task.Run(() => DrawnClosing.Odds(request, mosaic));
            panels = [.. mosaic.Panels.Select(panel => Planned(request, frame, panel))];
            thin = NeighbourSides.Thin(mosaic, PlanWarnings.WorthSaying);
            route = ShootingRoute.Of(
                [.. panels.Select(panel => panel.OfDate)],
                [.. panels.Select(panel => panel.Row)],
                [.. panels.Select(panel => panel.Column)],
                new(request.Handling)
            );
            coverage = CoverageMeasure.Of(mosaic, request.Target.Outline);
            odds = drawn.GetAwaiter().GetResult();
            turns = PanelTurns.Of(request, overlap, fit, coverage, odds);
        }

        var plan = new FramedPlan
        {
            Request = request,
            Pose = pose,
            RotationReason = rotationReason,
            TangentMargin = fit.TangentMargin,
            WantedTangentMargin = wanted,
            Overlap = overlap,
            OverlapReason = overlapReason,
            Columns = fit.Columns,
            Rows = fit.Rows,
            PlacedPanels = fit.Places?.Places.Count,
            Panels = panels,
            Coverage = coverage,
            Odds = odds,
            Turns = turns,
            ThinOverlaps = thin,
            Route = route,
            Warnings = [],
            Impossible = impossible,
        };
        return plan with { Warnings = PlanWarnings.Of(plan, fit) };
    }

    private static PlannedPanel Planned(FramingRequest request, OfDateFrame frame, Panel panel)
    {
        var ofDate = frame.ToOfDate(panel.Pose.Centre);
        var entry = request.GotoFrame == GotoFrame.OfDate ? ofDate : panel.Pose.Centre;
        return new()
        {
            Number = panel.Number,
            Column = panel.Column,
            Row = panel.Row,
            Centre = panel.Pose.Centre,
            PositionAngle = panel.Pose.PositionAngle,
            Corners = panel.Corners,
            OfDate = ofDate,
            At = request.At,
            EntryRa = EntryText.RightAscension(entry.RightAscension, request.EntryFormat),
            EntryDec = EntryText.Declination(entry.Declination, request.EntryFormat),
        };
    }
}
