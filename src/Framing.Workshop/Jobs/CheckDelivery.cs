using Framing.Export;

namespace Framing.Workshop;

/// <summary>What became of a check.</summary>
/// <param name="Frames">The frames with their checks.</param>
/// <param name="Messages">What the user should know beside what belongs to a frame.</param>
/// <param name="Impossible">Why nothing could be checked; null when a frame was.</param>
public sealed record CheckDelivery(
    IReadOnlyList<CheckedFrame> Frames,
    IReadOnlyList<string> Messages,
    string? Impossible
);
