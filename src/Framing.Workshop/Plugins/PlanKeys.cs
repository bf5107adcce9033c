namespace Framing.Workshop;

/// <summary>The keys of the plan's own beside which a strategy's settings stand.</summary>
public static class PlanKeys
{
    private static readonly string[] Rotation =
    [
        "strategy",
        "camera_angle_deg",
        "camera_angle_sigma_deg",
    ];

    private static readonly string[] Overlap =
    [
        "overlap",
        "chance_no_gap",
        "grid",
        "most_panels",
        "turn_camera_at_each_panel",
        "centre",
        "shared_errors",
    ];

    /// <summary>The plan's own keys in the table that names a strategy.</summary>
    /// <param name="kind">Which question the strategy answers.</param>
    /// <returns>The keys of <c>[rotation]</c> or of <c>[mosaic]</c>.</returns>
    public static IReadOnlyList<string> Of(StrategyKind kind) =>
        kind == StrategyKind.Rotation ? Rotation : Overlap;

    /// <summary>True for a key of the plan's own, which no strategy may declare.</summary>
    internal static bool IsOfThePlan(StrategyKind kind, string key) =>
        Array.IndexOf(kind == StrategyKind.Rotation ? Rotation : Overlap, key) >= 0;
}
