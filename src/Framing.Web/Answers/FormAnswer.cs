using Framing.Workshop;

namespace Framing.Web;

/// <summary>The plan's own values that the page's editors start from.</summary>
internal sealed record FormAnswer
{
    public required IReadOnlyList<string> Names { get; init; }

    public required double MarginArcmin { get; init; }

    public required double FocalLengthMm { get; init; }

    /// <summary>True when the rig stands in a file of its own, which the page leaves alone.</summary>
    public required bool RigIsFile { get; init; }

    public required string Rotation { get; init; }

    public required string Overlap { get; init; }

    /// <summary>Settings of both strategies, as TOML has them.</summary>
    public required IReadOnlyDictionary<string, object> RotationSettings { get; init; }

    public required IReadOnlyDictionary<string, object> OverlapSettings { get; init; }

    public required double? CameraAngleDeg { get; init; }

    /// <summary>fewest, adapted or fixed.</summary>
    public required string Grid { get; init; }

    public required int Columns { get; init; }

    public required int Rows { get; init; }

    public required bool TurnCameraAtEachPanel { get; init; }

    public required bool CentreIsFixed { get; init; }

    public required string Evening { get; init; }

    public static FormAnswer Of(DeskPlan plan)
    {
        var file = plan.File;
        var grid = file.Mosaic.Grid;
        return new()
        {
            Names = file.Target.Names,
            MarginArcmin = Math.Round(file.Target.Margin.Arcminutes, 6),
            FocalLengthMm = file.Rig.FocalLengthMillimetres,
            RigIsFile = !PlanDesk.Has(plan.Text, "rig.focal_length_mm"),
            Rotation = file.Rotation.Strategy.Name,
            Overlap = file.Mosaic.Overlap.Name,
            RotationSettings = file.Rotation.Strategy.Settings,
            OverlapSettings = file.Mosaic.Overlap.Settings,
            CameraAngleDeg = file.Rotation.CameraAngle?.Degrees,
            Grid =
                grid.IsAdapted ? "adapted"
                : grid.IsFewest ? "fewest"
                : "fixed",
            Columns = plan.Plan.Columns,
            Rows = plan.Plan.Rows,
            TurnCameraAtEachPanel = file.Mosaic.TurnCameraAtEachPanel,
            CentreIsFixed = file.Mosaic.Centre is not null,
            Evening = plan.Evening.ToString(
                "yyyy-MM-dd",
                System.Globalization.CultureInfo.InvariantCulture
            ),
        };
    }
}
