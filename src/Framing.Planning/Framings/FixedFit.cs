using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Planning;

/// <summary>A grid whose middle and angle are given: what it holds of the outline, and what it leaves.</summary>
internal static class FixedFit
{
    public static GridFit At(FramingRequest request, CameraPose pose, PanelOverlap overlap)
    {
        var (columns, rows) = request.Grid.IsFewest
            ? (1, 1)
            : (request.Grid.Columns, request.Grid.Rows);
        var field = request.Rig.Field;
        var whole = new FieldShape(
            (columns * field.TangentWidth) - ((columns - 1) * overlap.AlongWidth),
            (rows * field.TangentHeight) - ((rows - 1) * overlap.AlongHeight)
        );
        var plane = new TangentPlane(pose.Centre);
        var (sin, cos) = Math.SinCos(pose.PositionAngle.Radians);
        var (right, up) = (0.0, 0.0);
        foreach (var corner in request.Target.Outline.Corners)
        {
            // A corner behind the plane is farther out than any frame reaches.
            var point = plane.TryProject(corner, out var seen) ? seen : new PlanePoint(1e3, 1e3);
            right = Math.Max(right, Math.Abs((point.Eta * sin) - (point.Xi * cos)));
            up = Math.Max(up, Math.Abs((point.Xi * sin) + (point.Eta * cos)));
        }

        return new(
            columns,
            rows,
            new FittedFrame(pose, whole, 2.0 * right, 2.0 * up),
            request.WantedTangentMargin,
            request.MostPanels
        );
    }
}
