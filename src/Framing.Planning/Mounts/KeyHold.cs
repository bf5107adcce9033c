namespace Framing.Planning;

/// <summary>One key held for a while.</summary>
/// <param name="Towards">Where the telescope points further by it: not where the stars go.</param>
/// <param name="Key">What is printed on the key.</param>
/// <param name="Speed">The speed of the hand control.</param>
/// <param name="Seconds">How long, more than 0.</param>
public sealed record KeyHold(MountDirection Towards, string Key, MountSpeed Speed, double Seconds);
