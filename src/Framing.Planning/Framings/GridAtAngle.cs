using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Planning;

/// <summary>The grid that a request needs at a camera angle.</summary>
internal static class GridAtAngle
{
    /// <summary>Steps in which an adapted grid is widened until a camera left alone loses nothing of the outline.</summary>
    private const int Widenings = 4;

    /// <summary>A part of the outline as small as this is rounding.</summary>
    private const double Rounding = 1e-9;

    public static GridFit Of(FramingRequest request, PanelOverlap overlap, PositionAngle angle)
    {
        if (request.FixedCentre is { } middle)
        {
            return MosaicFit.At(
                request.Target.Outline,
                request.Rig.Field,
                overlap,
                request.Grid,
                request.WantedTangentMargin,
                request.MostPanels,
                new(middle, angle)
            );
        }

        var fit = AtAngle(request, overlap, angle, request.Grid, request.WantedTangentMargin);
        return fit.Places is null || request.TurnCameraAtEachPanel || !fit.WithinMostPanels
            ? fit
            : Widened(request, overlap, angle, fit);
    }

    /// <summary>
    /// Panels that a camera left alone turns against the grid lose some sky at the ends of their bands, where an adapted
    /// grid has none to spare: it is laid out with more margin until it holds what the full rectangle holds.
    /// </summary>
    private static GridFit Widened(
        FramingRequest request,
        PanelOverlap overlap,
        PositionAngle angle,
        GridFit fit
    )
    {
        if (Held(request, overlap, fit) >= 1.0 - Rounding)
        {
            return fit;
        }

        var full = AtAngle(request, overlap, angle, GridWish.Fewest, request.WantedTangentMargin);
        var wanted = Held(request, overlap, full) - Rounding;
        var lost = Lost(request, overlap, fit);
        for (var i = 1; i <= Widenings; i++)
        {
            var wider = AtAngle(
                request,
                overlap,
                angle,
                GridWish.Adapted,
                request.WantedTangentMargin + (lost * i / Widenings)
            ) with
            {
                WantedMargin = request.WantedTangentMargin,
            };
            if (wider.Panels >= full.Panels)
            {
                break;
            }

            if (Held(request, overlap, wider) >= wanted)
            {
                return wider;
            }
        }

        return full;
    }

    private static GridFit AtAngle(
        FramingRequest request,
        PanelOverlap overlap,
        PositionAngle angle,
        GridWish grid,
        double margin
    ) =>
        MosaicFit.AtAngle(
            request.Target.Outline,
            request.Rig.Field,
            overlap,
            grid,
            margin,
            request.MostPanels,
            angle
        );

    private static double Held(FramingRequest request, PanelOverlap overlap, GridFit fit) =>
        CoverageMeasure
            .Of(LaidMosaic.Of(request, overlap, fit), request.Target.Outline)
            .TargetCoveredFraction;

    /// <summary>What the panel that is turned most loses at its corners.</summary>
    private static double Lost(FramingRequest request, PanelOverlap overlap, GridFit fit)
    {
        var alone = LaidMosaic.Of(request, overlap, fit);
        var turned = LaidMosaic.Of(request with { TurnCameraAtEachPanel = true }, overlap, fit);
        var turn = alone
            .Panels.Zip(
                turned.Panels,
                (one, other) =>
                    Math.Abs(one.Pose.PositionAngle.FrameTurnTo(other.Pose.PositionAngle).Radians)
            )
            .Max();
        var field = request.Rig.Field;
        return Math.Max(field.TangentWidth, field.TangentHeight) / 2.0 * Math.Sin(turn);
    }
}
