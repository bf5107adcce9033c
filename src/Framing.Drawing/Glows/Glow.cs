using Framing.Sky;

namespace Framing.Drawing;

/// <summary>The made-up light of one area: clouds that fade out towards its border.</summary>
internal sealed class Glow
{
    // An area is a figure in the plane that touches the sky at its middle; beyond this it is no area that one draws.
    private const double LargestRadiusDegrees = 60.0;

    private readonly TangentPlane plane;
    private readonly PlanePoint[] corners;
    private readonly double size;
    private readonly double cosReach;
    private readonly Noise clouds;
    private readonly Noise eastward;
    private readonly Noise northward;

    public Glow(SkyPolygon area, ulong seed)
    {
        plane = new(area.Middle);
        var shown = area.Radius.Degrees < LargestRadiusDegrees;
        corners = shown ? [.. area.Corners.Select(plane.Project)] : [];
        cosReach = shown ? Math.Cos(area.Radius.Radians) - 1e-12 : 2.0;

        // The radius of a circle of the same area: it sets the size of the clouds.
        size = Math.Sqrt(area.Area.Steradians / Math.PI);

        // To a minute of arc: the same object has the same clouds though its place was read from another row.
        var place = area.Middle.Vector;
        var mixed = seed;
        foreach (var part in (ReadOnlySpan<double>)[place.X, place.Y, place.Z])
        {
            mixed = unchecked(
                (mixed * 0x9E3779B97F4A7C15UL) + (ulong)(long)Math.Round(part * 3438.0)
            );
        }

        clouds = new(mixed);
        eastward = new(mixed ^ 0x5555555555555555UL);
        northward = new(mixed ^ 0x3333333333333333UL);
    }

    /// <summary>The light at a direction, 0 (none) to 1.</summary>
    /// <param name="direction">The direction.</param>
    /// <param name="finest">The smallest angle that can be shown, in radians.</param>
    public double At(SkyDirection direction, double finest)
    {
        if (
            direction.Vector.Dot(plane.Centre.Vector) < cosReach
            || !plane.TryProject(direction, out var point)
            || Depth(point) is not (> 0.0 and var depth)
        )
        {
            return 0.0;
        }

        // From the border half way in it grows; clouds bend its edge, so that the outline is not drawn a second time.
        var (x, y) = (point.Xi / size, point.Eta / size);
        var step = finest / size;
        var bend = eastward.At(x * 2.3, y * 2.3, step * 2.3) - 0.5;
        var drift = northward.At((x * 2.3) + 9.1, y * 2.3, step * 2.3) - 0.5;
        var cloud = clouds.At((x * 2.1) + (1.6 * bend), (y * 2.1) + (1.6 * drift), step * 2.1);

        // Where the hills of the noise meet their middle height, threads run: bright ridges.
        var thread = 1.0 - Math.Abs((2.0 * cloud) - 1.0);
        var light = (0.35 * thread * thread * thread) + (0.65 * Rise((cloud - 0.25) / 0.5));
        return light
            * Rise((depth / (0.6 * size)) + (0.5 * bend * Math.Min(1.0, depth / (0.2 * size))));
    }

    private static double Rise(double part)
    {
        var clamped = Math.Clamp(part, 0.0, 1.0);
        return clamped * clamped * (3.0 - (2.0 * clamped));
    }

    /// <summary>How far a point is from the border, in the plane; below zero outside.</summary>
    private double Depth(PlanePoint point)
    {
        var nearest = double.MaxValue;
        var inside = false;
        for (int i = 0, j = corners.Length - 1; i < corners.Length; j = i++)
        {
            var (ax, ay) = (corners[j].Xi - point.Xi, corners[j].Eta - point.Eta);
            var (bx, by) = (corners[i].Xi - point.Xi, corners[i].Eta - point.Eta);
            var (dx, dy) = (bx - ax, by - ay);
            if (ay > 0.0 != by > 0.0 && (ax - (ay * dx / dy)) > 0.0)
            {
                inside = !inside;
            }

            var length = (dx * dx) + (dy * dy);
            var foot = length > 0.0 ? Math.Clamp(-((ax * dx) + (ay * dy)) / length, 0.0, 1.0) : 0.0;
            var (fx, fy) = (ax + (foot * dx), ay + (foot * dy));
            nearest = Math.Min(nearest, (fx * fx) + (fy * fy));
        }

        return inside ? Math.Sqrt(nearest) : -Math.Sqrt(nearest);
    }
}
