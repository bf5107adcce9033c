using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Planning;

/// <summary>Lays a fitted grid on the sky as the request's mount and camera will shoot it.</summary>
internal static class LaidMosaic
{
    public static Mosaic Of(FramingRequest request, PanelOverlap overlap, GridFit fit)
    {
        var turning = request.TurnCameraAtEachPanel
            ? CameraTurning.TurnedAtEachPanel
            : CameraTurning.LeftAlone;
        var pole = OfDateFrame.At(TerrestrialTime.FromUtc(request.At)).PoleOfDate;
        return fit.Places is { } places
            ? Mosaic.Placed(
                fit.Frame.Pose,
                request.Rig.Field,
                overlap,
                places,
                request.Rig.Mirrored,
                turning,
                pole
            )
            : Mosaic.Grid(
                fit.Frame.Pose,
                request.Rig.Field,
                overlap,
                fit.Columns,
                fit.Rows,
                request.Rig.Mirrored,
                turning,
                pole
            );
    }
}
