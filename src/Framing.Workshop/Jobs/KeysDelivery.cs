using Framing.Planning;

namespace Framing.Workshop;

/// <summary>What became of a trial of a key.</summary>
/// <param name="Result">What the key does, or why that cannot be told.</param>
/// <param name="Handling">The mount as it was known.</param>
/// <param name="Messages">What the user should know.</param>
public sealed record KeysDelivery(
    KeyResult Result,
    MountHandling Handling,
    IReadOnlyList<string> Messages
);
