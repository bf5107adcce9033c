namespace Framing.Nights;

/// <summary>The finding, or why there is none.</summary>
/// <param name="Finding">Where the axis points; null when it cannot be told.</param>
/// <param name="Refusal">Why it cannot be told, and what to do; null when it can.</param>
public sealed record AxisResult(AxisFinding? Finding, string? Refusal);
