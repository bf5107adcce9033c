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

        // The place whose apparent place is the pole: against it position angles are those that a camera keeps which the
        // mount carries about the pole of date, aberration included (at declination 88° that alone is up to 0.16°). Of the
        // two poles the nearer one: aberration moves both the same way, so that they are not opposite each other.
        var pole = OfDateFrame
            .At(TerrestrialTime.FromUtc(request.At))
            .ToIcrs(
                fit.Frame.Pose.Centre.Declination.Radians >= 0.0
                    ? SkyDirection.NorthPole
                    : SkyDirection.SouthPole
            );
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
