namespace Framing.Workshop;

/// <summary>From which frames, and for which place, the user wants the polar axis found.</summary>
public sealed record PolarOrder
{
    /// <summary>Two frames or three, as named.</summary>
    public required IReadOnlyList<string> Frames { get; init; }

    /// <summary>The folder that relative paths of frames start from.</summary>
    public required string WorkingFolder { get; init; }

    /// <summary>A site file; null to take the plan's site.</summary>
    public string? SitePath { get; init; }

    /// <summary>A plan whose site is taken and whose mount learns the error; null for none.</summary>
    public string? PlanPath { get; init; }
}
