using System.Globalization;
using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Planning;

/// <summary>Adds up all frames so far against a plan: what each panel has, what is missing, what to shoot next.</summary>
/// <remarks>Unlike filters and lengths of subs are never added up. The same frames in another order give the same tally.</remarks>
public static class FrameTally
{
    /// <summary>A frame that shows less of its panel, and whose panel shows less of it, belongs to no panel.</summary>
    private const double LeastShared = 0.3;

    /// <summary>Adds up.</summary>
    /// <param name="request">The plan, its goals, the frames.</param>
    /// <returns>The tally.</returns>
    /// <exception cref="ArgumentException">The framing has no panels.</exception>
    public static PlanTally Of(TallyRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (request.Plan.Panels.Count == 0)
        {
            throw new ArgumentException("The framing has no panels.", nameof(request));
        }

        var frames = Once(request.Frames);
        var leftOut = new List<LeftOutFrame>();
        var shots = new List<Shot>();
        foreach (var frame in frames.Where(frame => frame.Kind == ShotKind.Light))
        {
            var panel = frame.Pose is null ? null : PanelOf(request.Plan, frame);
            var fault = FrameJudge.Alone(frame) ?? Unplaced(request.Plan, frame, panel);
            if (fault is not null)
            {
                leftOut.Add(new(frame.File, fault));
            }

            if (panel is not null)
            {
                shots.Add(
                    new(frame, panel, FilterOf(request, frame), frame.ExposureSeconds ?? 0.0, fault)
                );
            }
        }

        shots = [.. Judged(shots, leftOut)];
        var panels = request
            .Plan.Panels.Select(panel =>
                Panel(request, panel, [.. shots.Where(shot => shot.Panel == panel)])
            )
            .ToList();
        var good = shots.Where(shot => shot.Fault is null).ToList();
        return new()
        {
            Panels = panels,
            LeftOut = [.. leftOut.OrderBy(frame => frame.File, StringComparer.Ordinal)],
            Calibration =
            [
                .. frames
                    .Where(frame => frame.Kind != ShotKind.Light)
                    .Select(frame => new CalibrationFrame(frame.File, frame.Kind)),
            ],
            Cover = FrameCoverage.Of(
                [.. good.Select(shot => shot.Frame.Corners)],
                new([.. request.Plan.Panels.Select(panel => new SkyPolygon(panel.Corners))])
            ),
            Next = [.. Next(request, panels)],
            Doubles = request.Frames.Count - frames.Count,
            Warnings =
            [
                .. FlatWatch.Warnings(
                    good.Select(shot => (shot.Frame, shot.Panel)),
                    [.. frames.Where(frame => frame.Kind == ShotKind.Flat)]
                ),
            ],
        };
    }

    /// <summary>Each frame once, the one that knows most of itself; in the order of time and name.</summary>
    private static List<ShotFrame> Once(IReadOnlyList<ShotFrame> frames) =>
        [
            .. frames
                .GroupBy(frame => frame.Key, StringComparer.Ordinal)
                .Select(same =>
                    same.OrderByDescending(frame => frame.Fault is null)
                        .ThenByDescending(frame => frame.Pose is not null)
                        .ThenByDescending(frame => frame.Filter is not null)
                        .ThenBy(frame => frame.File, StringComparer.Ordinal)
                        .First()
                )
                .OrderBy(frame => frame.At ?? DateTime.MaxValue)
                .ThenBy(frame => frame.File, StringComparer.Ordinal),
        ];

    /// <summary>The panel of which a frame shows most; null where it shows too little of any.</summary>
    private static PlannedPanel? PanelOf(FramedPlan plan, ShotFrame frame)
    {
        var pose = frame.Pose!.Value;
        var panel = plan.Panels.MinBy(candidate =>
            candidate.Centre.SeparationTo(pose.Centre).Radians
        )!;
        var field = plan.Request.Rig.Field;
        var reach = (field.Diagonal.Radians + frame.Field.Diagonal.Radians) / 2.0;
        if (panel.Centre.SeparationTo(pose.Centre).Radians > reach)
        {
            return null;
        }

        var ofPanel = FrameCoverage
            .Of([frame.Corners], new([new SkyPolygon(panel.Corners)]))
            .CoveredFraction;
        var ofFrame = ofPanel * field.Area.Steradians / frame.Field.Area.Steradians;
        return Math.Max(ofPanel, ofFrame) >= LeastShared ? panel : null;
    }

    private static string? Unplaced(FramedPlan plan, ShotFrame frame, PlannedPanel? panel)
    {
        if (panel is not null)
        {
            return frame.ExposureSeconds is > 0.0
                ? null
                : "it does not say how long it was exposed (EXPTIME)";
        }

        if (frame.Pose is not { } pose)
        {
            return "where it looks is not known";
        }

        var nearest = plan.Panels.MinBy(candidate =>
            candidate.Centre.SeparationTo(pose.Centre).Radians
        )!;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"another part of the sky: {nearest.Centre.SeparationTo(pose.Centre).Degrees:0.0}° from panel {nearest.Number}"
        );
    }

    /// <summary>The plan's name of a frame's filter: case, spaces and signs do not matter.</summary>
    private static string FilterOf(TallyRequest request, ShotFrame frame)
    {
        var written = frame.Filter ?? string.Empty;
        return request.Goals.FirstOrDefault(goal => Plain(goal.Filter) == Plain(written))?.Filter
            ?? (
                // A plan that names no filter takes whatever was in the light path.
                request.Goals
                    is [{ Filter: "" }]
                && written.Length == 0
                    ? string.Empty
                    : written
            );
    }

    private static string Plain(string name) =>
        string.Concat(name.Where(char.IsLetterOrDigit)).ToUpperInvariant();

    private static IEnumerable<Shot> Judged(List<Shot> shots, List<LeftOutFrame> leftOut)
    {
        foreach (
            var group in shots.GroupBy(shot => (shot.Panel.Number, shot.Filter, shot.SubSeconds))
        )
        {
            var reasons = FrameJudge.Together([
                .. group.Where(shot => shot.Fault is null).Select(shot => shot.Frame),
            ]);
            foreach (var shot in group)
            {
                if (shot.Fault is null && reasons.TryGetValue(shot.Frame.Key, out var reason))
                {
                    leftOut.Add(new(shot.Frame.File, reason));
                    yield return shot with
                    {
                        Fault = reason,
                    };
                }
                else
                {
                    yield return shot;
                }
            }
        }
    }

    private static PanelTally Panel(
        TallyRequest request,
        PlannedPanel panel,
        IReadOnlyList<Shot> shots
    )
    {
        var byFilter = shots
            .GroupBy(shot => (shot.Filter, shot.SubSeconds))
            .OrderBy(group => group.Key.Filter, StringComparer.Ordinal)
            .ThenBy(group => group.Key.SubSeconds)
            .Select(group => new FilterTally(
                group.Key.Filter,
                group.Key.SubSeconds,
                group.Count(shot => shot.Fault is null),
                group.Count(shot => shot.Fault is not null),
                group.Where(shot => shot.Fault is null).Sum(shot => shot.SubSeconds)
            ))
            .ToList();
        var good = shots.Where(shot => shot.Fault is null).Select(shot => shot.Frame).ToList();
        var wanted = request.Goals.Sum(goal => goal.Seconds);
        return new(
            panel,
            byFilter,
            FrameCoverage
                .Of([.. good.Select(frame => frame.Corners)], new([new SkyPolygon(panel.Corners)]))
                .CoveredFraction,
            wanted > 0.0
                ? request.Goals.Sum(goal => Math.Min(goal.Seconds, Reached(goal, byFilter)))
                    / wanted
                : 1.0,
            good
        );
    }

    /// <summary>What counts towards a goal: subs of the plan's length, or of the length that has most.</summary>
    private static double Reached(TallyGoal goal, IReadOnlyList<FilterTally> byFilter) =>
        byFilter
            .Where(entry => goal.Filter.Length == 0 || entry.Filter == goal.Filter)
            .Select(entry => entry.ExposureSeconds)
            .DefaultIfEmpty(0.0)
            .Max();

    private static IEnumerable<NextShots> Next(
        TallyRequest request,
        IReadOnlyList<PanelTally> panels
    ) =>
        panels
            .OrderBy(panel => panel.GoalFraction)
            .ThenBy(panel => panel.Panel.Number)
            .SelectMany(panel =>
                request
                    .Goals.Select(goal =>
                        (Goal: goal, Missing: goal.Seconds - Reached(goal, panel.ByFilter))
                    )
                    .Where(entry => entry.Missing > 0.5)
                    .Select(entry => ToShoot(request, panel, entry.Goal, entry.Missing))
            );

    private static NextShots ToShoot(
        TallyRequest request,
        PanelTally panel,
        TallyGoal goal,
        double missing
    )
    {
        // Without a length in the plan, the one that was shot.
        var sub =
            goal.SubSeconds > 0.0
                ? goal.SubSeconds
                : panel
                    .ByFilter.OrderByDescending(entry => entry.ExposureSeconds)
                    .Select(entry => entry.SubSeconds)
                    .FirstOrDefault();
        var subs =
            sub > 0.0 ? (int)Math.Ceiling(missing / sub / (1.0 - request.ExpectedLoss) - 1e-9) : 0;
        return new(panel.Panel.Number, goal.Filter, sub, subs, missing);
    }

    private sealed record Shot(
        ShotFrame Frame,
        PlannedPanel Panel,
        string Filter,
        double SubSeconds,
        string? Fault
    );
}
