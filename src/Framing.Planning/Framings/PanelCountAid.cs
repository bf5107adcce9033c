using Framing.Mosaics;
using Framing.Sky;
using Framing.Strategies;

namespace Framing.Planning;

/// <summary>Counts panels for strategies that ask.</summary>
internal sealed class PanelCountAid(FramingRequest request, PanelOverlap overlap) : IPanelCount
{
    public PanelCount At(PositionAngle angle)
    {
        var fit = GridAtAngle.Of(request, overlap, angle);
        return new(fit.Columns, fit.Rows, fit.TangentMargin) { Placed = fit.Places?.Places.Count };
    }
}
