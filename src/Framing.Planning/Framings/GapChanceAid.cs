using Framing.Mosaics;
using Framing.Strategies;

namespace Framing.Planning;

/// <summary>Answers how likely a mosaic is to close, for strategies that ask.</summary>
internal sealed class GapChanceAid(FramingRequest request) : IGapChance
{
    public double NoGap(PanelOverlap overlap) => request.ChanceNoGap;
}
