namespace Framing.Workshop;

/// <summary>What a rehearsal made.</summary>
/// <param name="Frames">The frames, in the order of their exposure.</param>
/// <param name="ErrorPath">The evening's file; null without an evening.</param>
/// <param name="IsNewEvening">True when the evening began with this call.</param>
/// <param name="Messages">What a person should know.</param>
public sealed record RehearsalDelivery(
    IReadOnlyList<DeliveredFrame> Frames,
    string? ErrorPath,
    bool IsNewEvening,
    IReadOnlyList<string> Messages
);
