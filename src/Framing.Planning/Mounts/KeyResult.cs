namespace Framing.Planning;

/// <summary>The finding, or why there is none.</summary>
/// <param name="Finding">What the key does; null when it cannot be told.</param>
/// <param name="Refusal">Why it cannot be told, and what to do; null when it can.</param>
public sealed record KeyResult(KeyFinding? Finding, string? Refusal);
