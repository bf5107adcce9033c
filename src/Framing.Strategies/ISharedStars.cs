using Framing.Mosaics;

namespace Framing.Strategies;

/// <summary>Answers how many stars neighbouring panels have in common, by which their pictures are laid onto each other.</summary>
public interface ISharedStars
{
    /// <summary>The stars to expect in the strip that has the fewest, of all strips that neighbours of the mosaic share.</summary>
    /// <param name="overlap">The overlap planned; each strip is taken as the panels will really stand.</param>
    /// <param name="faintestMagnitude">The faintest Johnson V magnitude that counts.</param>
    /// <returns>
    /// The number expected, 0 or more, from counts of stars by place and magnitude; positive infinity where there are no
    /// neighbours.
    /// </returns>
    double Fewest(PanelOverlap overlap, double faintestMagnitude);
}
