using System.Globalization;
using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Planning;

/// <summary>What the user should know of a framing: what, by how much, and what to do.</summary>
internal static class PlanWarnings
{
    private const double ArcminutesPerTangent = 60.0 * 180.0 / Math.PI;

    /// <summary>Below this a part of the outline that is not covered is rounding.</summary>
    public const double LeastFraction = 1e-6;

    /// <summary>A smaller gap, in square minutes of arc, is rounding.</summary>
    public const double LeastGapArcminutes = 0.01;

    /// <summary>More panels than this are counted, not named.</summary>
    private const int MostNamed = 6;

    /// <summary>A loss of overlap below which it is not worth a word.</summary>
    public static readonly Angle WorthSaying = Angle.FromArcminutes(2.0);

    public static IReadOnlyList<string> Of(FramedPlan plan, GridFit fit)
    {
        var warnings = new List<string>(plan.Request.Target.Notes);
        if (plan.Impossible is not null)
        {
            return warnings;
        }

        if (plan.Coverage is { TargetCoveredFraction: < LeastFraction })
        {
            var away = plan.Pose.Centre.SeparationTo(plan.Request.Target.Outline.Middle);
            warnings.Add(
                FormattableString.Invariant(
                    $"This shows nothing of {plan.Request.Target.Name}: its middle is {away.Degrees:0.0}° away. {Remedy(plan, fit)}"
                )
            );
            return warnings;
        }

        if (plan.TangentMargin < -LeastFraction * plan.Request.Rig.Field.TangentHeight)
        {
            warnings.Add(FallsShort(plan, fit));
        }
        else if (!fit.HoldsMargin)
        {
            warnings.Add(
                FormattableString.Invariant(
                    $"The tight sides keep {Arcminutes(plan.TangentMargin):0.0}′ of margin, {Arcminutes(plan.WantedTangentMargin - plan.TangentMargin):0.0}′ less than wanted. {Remedy(plan, fit)}"
                )
            );
        }

        OutOfReach(warnings, plan);
        if (plan.Coverage is { } coverage)
        {
            Openings(warnings, plan, coverage);
            if (
                coverage.GapArea.SquareArcminutes <= LeastGapArcminutes
                && ClosingWarnings.Of(plan) is { } seldom
            )
            {
                warnings.Add(seldom);
            }
        }

        return warnings;
    }

    private static void Openings(List<string> warnings, FramedPlan plan, MosaicCoverage coverage)
    {
        var turned = plan.Request.TurnCameraAtEachPanel;
        var remedy = turned
            ? "Raise the overlap."
            : "A camera left alone turns against its neighbours here: set turn_camera_at_each_panel = true, or raise the overlap.";
        if (coverage.GapArea.SquareArcminutes > LeastGapArcminutes)
        {
            warnings.Add($"Between the panels {AreaText.Of(coverage.GapArea)} stay open. {remedy}");
        }
        else if (plan.TangentMargin >= 0.0 && coverage.TargetCoveredFraction < 1.0 - LeastFraction)
        {
            warnings.Add(
                $"The panels leave {Percent(1.0 - coverage.TargetCoveredFraction)} of the outline uncovered. {remedy}"
            );
        }
        else if (
            !turned
            && MostLost(plan, coverage) is var (nominal, least)
            && least < nominal - WorthSaying.Arcminutes
        )
        {
            warnings.Add(
                FormattableString.Invariant(
                    $"A camera left alone turns against its neighbours here: of {nominal:0.#}′ of overlap {least:0.#}′ are left where it is least. If that is too little, set turn_camera_at_each_panel = true, or raise the overlap."
                )
            );
        }
    }

    /// <summary>Of overlaps side by side and one above the other the one that loses most: what was asked for, and what is left, in minutes of arc.</summary>
    private static (double Nominal, double Left) MostLost(
        FramedPlan plan,
        MosaicCoverage coverage
    ) =>
        new[]
        {
            (plan.Overlap.AlongWidth, coverage.LeastOverlapInRows),
            (plan.Overlap.AlongHeight, coverage.LeastOverlapInColumns),
        }
            .Where(way => way.Item2 is not null)
            .Select(way => (Nominal: Arcminutes(way.Item1), Left: way.Item2!.Value.Arcminutes))
            .OrderByDescending(way => way.Nominal - way.Left)
            .FirstOrDefault();

    private static string FallsShort(FramedPlan plan, GridFit fit)
    {
        var plane = new TangentPlane(plan.Pose.Centre);
        var (sin, cos) = Math.SinCos(plan.Pose.PositionAngle.Radians);
        var field = fit.Frame.Field;
        var worst = plan
            .Request.Target.Outline.Corners.Select(corner =>
            {
                var point = plane.TryProject(corner, out var seen)
                    ? seen
                    : new PlanePoint(1e3, 1e3);
                var up = (point.Xi * sin) + (point.Eta * cos);
                var right = (point.Eta * sin) - (point.Xi * cos);
                var outside = Math.Max(
                    Math.Abs(right) - (field.TangentWidth / 2.0),
                    Math.Abs(up) - (field.TangentHeight / 2.0)
                );
                return (Corner: corner, Outside: outside);
            })
            .MaxBy(entry => entry.Outside);
        var wind = SkyWind.Of(plan.Pose.Centre.PositionAngleTo(worst.Corner));
        var frame = plan.PanelCount == 1 ? "frame" : "mosaic";
        return FormattableString.Invariant(
            $"The {wind} end of the outline falls {Arcminutes(worst.Outside):0.0}′ outside the {frame}. {Remedy(plan, fit)}"
        );
    }

    private static string Remedy(FramedPlan plan, GridFit fit)
    {
        var request = plan.Request;
        if (request.FixedCentre is not null)
        {
            return string.Equals(request.Rotation.Name, "like", StringComparison.Ordinal)
                ? "Centre and angle are those of the frame that you gave."
                : "The plan fixes the middle of the mosaic: move it, or leave mosaic.centre out.";
        }

        var best = MosaicFit.LargestMargin(
            request.Target.Outline,
            request.Rig.Field,
            plan.Overlap,
            GridWish.Fixed(plan.Columns, plan.Rows),
            plan.WantedTangentMargin,
            request.MostPanels,
            request.PresentCameraAngle
        );
        if (best.HoldsMargin)
        {
            return FormattableString.Invariant(
                $"Turn the camera to {Math.Round(best.Frame.Pose.PositionAngle.Degrees, 1) % 360.0}°, where it fits."
            );
        }

        var more = Enough(plan);
        return best.TangentMargin > plan.TangentMargin + (0.2 / ArcminutesPerTangent)
            ? FormattableString.Invariant(
                $"Turning the camera to {Math.Round(best.Frame.Pose.PositionAngle.Degrees, 1) % 360.0}° helps by {Arcminutes(best.TangentMargin - plan.TangentMargin):0.0}′; {more}."
            )
            : $"No other angle is better for this grid; {more}.";
    }

    /// <summary>How many panels would hold the target with its margin: at the angle that the plan has, and at the best.</summary>
    private static string Enough(FramedPlan plan)
    {
        var request = plan.Request;
        var here = MosaicFit.AtAngle(
            request.Target.Outline,
            request.Rig.Field,
            plan.Overlap,
            GridWish.Fewest,
            plan.WantedTangentMargin,
            request.MostPanels,
            plan.Pose.PositionAngle
        );
        var fewest = MosaicFit.LargestMargin(
            request.Target.Outline,
            request.Rig.Field,
            plan.Overlap,
            GridWish.Fewest,
            plan.WantedTangentMargin,
            request.MostPanels,
            request.PresentCameraAngle
        );
        return $"to hold it takes {Grid(here, plan.Pose.PositionAngle)}"
            + (
                fewest.Panels < here.Panels
                    ? $", or {Grid(fewest, fewest.Frame.Pose.PositionAngle)}"
                    : string.Empty
            );
    }

    private static string Grid(GridFit fit, PositionAngle angle) =>
        FormattableString.Invariant(
            $"{fit.Panels} panels at {Math.Round(angle.Degrees, 1) % 360.0}°, grid = [{fit.Columns}, {fit.Rows}]"
        );

    /// <summary>Panels that the mount cannot reach.</summary>
    private static void OutOfReach(List<string> warnings, FramedPlan plan)
    {
        var limit = plan.Request.DeclinationLimit;
        var beyond = plan
            .Panels.Where(panel => Math.Abs(panel.OfDate.Declination.Radians) > limit.Radians)
            .Select(panel => panel.Number.ToString(CultureInfo.InvariantCulture))
            .ToList();
        if (beyond.Count > 0)
        {
            var which =
                beyond.Count == 1 ? $"Panel {beyond[0]} stands"
                : beyond.Count <= MostNamed
                    ? $"Panels {string.Join(", ", beyond.SkipLast(1))} and {beyond[^1]} stand"
                : $"{beyond.Count} panels stand";
            warnings.Add(
                FormattableString.Invariant(
                    $"{which} beyond declination {limit.Degrees:0.##}°, where the camera meets the mount's arm or base (declination_limit_deg). {(beyond.Count == 1 ? "Leave it out" : "Leave them out")}, or frame less of the sky towards the pole."
                )
            );
        }
    }

    private static double Arcminutes(double tangent) => tangent * ArcminutesPerTangent;

    private static string Percent(double fraction) =>
        fraction < 0.001
            ? "less than 0.1 %"
            : FormattableString.Invariant($"{fraction * 100.0:0.0} %");
}
