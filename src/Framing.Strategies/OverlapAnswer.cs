using Framing.Mosaics;

namespace Framing.Strategies;

/// <summary>The answer of an overlap strategy.</summary>
public sealed record OverlapAnswer
{
    private OverlapAnswer() { }

    /// <summary>The overlap of neighbours; null when refused.</summary>
    public PanelOverlap? Overlap { get; private init; }

    /// <summary>Why, in a few plain words; of a refusal what is missing.</summary>
    public required string Reason { get; init; }

    /// <summary>An overlap.</summary>
    /// <param name="overlap">How much sky neighbours share, at least 0 and less than the panel.</param>
    /// <param name="reason">Why, in a few plain words.</param>
    /// <returns>The answer.</returns>
    public static OverlapAnswer Share(PanelOverlap overlap, string reason) =>
        new() { Overlap = overlap, Reason = reason };

    /// <summary>A refusal.</summary>
    /// <param name="reason">What is missing in the plan, and what would be right.</param>
    /// <returns>The answer.</returns>
    public static OverlapAnswer Refuse(string reason) => new() { Reason = reason };
}
