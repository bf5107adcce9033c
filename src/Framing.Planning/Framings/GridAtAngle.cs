using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Planning;

/// <summary>The grid that a request needs at a camera angle.</summary>
internal static class GridAtAngle
{
    public static GridFit Of(FramingRequest request, PanelOverlap overlap, PositionAngle angle) =>
        MosaicFit.AtAngle(
            request.Target.Outline,
            request.Rig.Field,
            overlap,
            request.Grid,
            request.WantedTangentMargin,
            request.MostPanels,
            angle
        );
}
