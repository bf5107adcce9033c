using Framing.Rehearsal;

namespace Framing.Workshop;

/// <summary>A key held for a while, as a user says it.</summary>
/// <param name="Key">Which key.</param>
/// <param name="Speed">The label of the hand control's speed.</param>
/// <param name="Seconds">How long, more than 0.</param>
public readonly record struct HeldKey(MountKey Key, string Speed, double Seconds);
