using Framing.Mosaics;

namespace Framing.Strategies;

/// <summary>Answers how likely a mosaic is to close.</summary>
public interface IGapChance
{
    /// <summary>The chance that no gap opens between any two neighbours, with the panel errors of the question.</summary>
    /// <param name="overlap">The overlap planned.</param>
    /// <returns>0 to 1; 1 where there are no neighbours.</returns>
    double NoGap(PanelOverlap overlap);
}
