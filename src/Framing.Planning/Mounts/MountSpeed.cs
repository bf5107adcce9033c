namespace Framing.Planning;

/// <summary>A speed of the hand control.</summary>
/// <param name="Label">What the hand control calls it.</param>
/// <param name="Sidereal">Its rate as a multiple of the sidereal rate, more than 0.</param>
public sealed record MountSpeed(string Label, double Sidereal);
