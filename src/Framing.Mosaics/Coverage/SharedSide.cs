using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Two neighbouring panels and how far they reach into each other.</summary>
/// <param name="First">Number of the panel to the left or above.</param>
/// <param name="Second">Number of the panel to the right or below.</param>
/// <param name="SideBySide">True for neighbours in a row, false for one above the other.</param>
/// <param name="LeastDepth">
/// The depth of the overlap where it is least along the length on which the two sides face each other, measured square to
/// either panel's side; negative where a gap opens. Two panels that do not face each other at all stand apart by a whole
/// panel: minus its width or height.
/// </param>
/// <param name="GreatestDepth">The depth where it is greatest.</param>
public sealed record SharedSide(
    int First,
    int Second,
    bool SideBySide,
    Angle LeastDepth,
    Angle GreatestDepth
);
