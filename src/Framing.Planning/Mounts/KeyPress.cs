namespace Framing.Planning;

/// <summary>A key that was held to see what it does.</summary>
/// <param name="Towards">Where it was believed to move the telescope.</param>
/// <param name="Speed">The speed of the hand control; null when it is to be told from the motion.</param>
/// <param name="Seconds">How long it was held, more than 0.</param>
public sealed record KeyPress(MountDirection Towards, MountSpeed? Speed, double Seconds);
