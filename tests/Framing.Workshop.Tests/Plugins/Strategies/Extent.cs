using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Workshop.Tests;

/// <summary>
/// What an outline takes up in a frame at an angle: written for the tests, straight from the definition, without hulls or
/// calipers.
/// </summary>
/// <param name="Centre">The middle of the outline both ways, in the plane that touches the sky there.</param>
/// <param name="Width">The extent along the frame's width, a tangent.</param>
/// <param name="Height">The extent along the frame's height, a tangent.</param>
internal readonly record struct Extent(SkyDirection Centre, double Width, double Height)
{
    public static Extent Of(SkyOutline outline, double upDegrees)
    {
        var (sin, cos) = Math.SinCos(upDegrees * Math.PI / 180.0);
        var centre = outline.Middle;
        for (var round = 0; ; round++)
        {
            var plane = new TangentPlane(centre);
            double left = double.MaxValue,
                right = double.MinValue,
                low = double.MaxValue,
                high = double.MinValue;
            foreach (var corner in outline.Corners)
            {
                var p = plane.Project(corner);
                var (u, v) = ((p.Eta * sin) - (p.Xi * cos), (p.Xi * sin) + (p.Eta * cos));
                (left, right) = (Math.Min(left, u), Math.Max(right, u));
                (low, high) = (Math.Min(low, v), Math.Max(high, v));
            }

            var (across, up) = ((left + right) / 2.0, (low + high) / 2.0);
            if (double.Hypot(across, up) < 1e-15 || round == 60)
            {
                return new(centre, right - left, high - low);
            }

            centre = plane.Unproject(new((up * sin) - (across * cos), (up * cos) + (across * sin)));
        }
    }

    public double MarginIn(FieldShape frame) =>
        Math.Min(frame.TangentWidth - Width, frame.TangentHeight - Height) / 2.0;
}
