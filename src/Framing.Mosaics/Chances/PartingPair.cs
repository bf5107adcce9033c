namespace Framing.Mosaics;

/// <summary>Two neighbours and how often a gap opened between them.</summary>
/// <param name="First">Number of the panel to the left or above.</param>
/// <param name="Second">Number of the panel to the right or below.</param>
/// <param name="Chance">The part of the mosaics drawn in which a gap opened between their facing sides, 0 to 1.</param>
public readonly record struct PartingPair(int First, int Second, double Chance);
