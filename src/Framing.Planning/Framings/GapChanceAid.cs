using Framing.Mosaics;
using Framing.Sky;
using Framing.Strategies;

namespace Framing.Planning;

/// <summary>Answers how likely a mosaic is to close, for strategies that ask: the closed form over the grid it would need.</summary>
internal sealed class GapChanceAid(FramingRequest request, PositionAngle angle) : IGapChance
{
    public double NoGap(PanelOverlap overlap)
    {
        var fit = GridAtAngle.Of(request, overlap, angle);
        return GapChance.OfGrid(request.Rig.Field, overlap, fit.Columns, fit.Rows, request.Errors);
    }
}
