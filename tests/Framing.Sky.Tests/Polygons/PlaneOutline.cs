namespace Framing.Sky.Tests;

/// <summary>A random simple outline around a direction, with the plain answers of its tangent plane.</summary>
internal sealed class PlaneOutline
{
    private readonly PlanePoint[] points;
    private readonly TangentPlane plane;

    /// <param name="random">Where the shape comes from.</param>
    /// <param name="middle">Where the tangent plane touches.</param>
    /// <param name="reach">The largest distance of a corner from the middle, as a tangent.</param>
    public PlaneOutline(Random random, SkyDirection middle, double reach)
    {
        plane = new TangentPlane(middle);
        points = new PlanePoint[random.Next(3, 13)];
        for (var i = 0; i < points.Length; i++)
        {
            // Corners in the order of their direction from the middle: nothing crosses itself, corners may point inwards.
            var direction = Math.Tau * (i + (0.6 * random.NextDouble())) / points.Length;
            var (sin, cos) = Math.SinCos(direction);
            var radius = reach * (0.2 + (0.8 * random.NextDouble()));
            points[i] = new(radius * sin, radius * cos);
        }
    }

    public IReadOnlyList<SkyDirection> Corners => [.. points.Select(plane.Unproject)];

    /// <summary>Counts how often a ray to the east crosses the sides: odd means inside.</summary>
    public bool Contains(PlanePoint p)
    {
        var inside = false;
        for (int i = 0, j = points.Length - 1; i < points.Length; j = i++)
        {
            var (a, b) = (points[j], points[i]);
            if ((a.Eta > p.Eta) != (b.Eta > p.Eta))
            {
                var xi = a.Xi + ((p.Eta - a.Eta) / (b.Eta - a.Eta) * (b.Xi - a.Xi));
                inside ^= xi > p.Xi;
            }
        }

        return inside;
    }

    /// <summary>The distance of a point from the nearest side, in the plane.</summary>
    public double DistanceToBorder(PlanePoint p)
    {
        var nearest = double.PositiveInfinity;
        for (int i = 0, j = points.Length - 1; i < points.Length; j = i++)
        {
            var side = points[i] - points[j];
            var to = p - points[j];
            var along = Math.Clamp(
                ((to.Xi * side.Xi) + (to.Eta * side.Eta))
                    / ((side.Xi * side.Xi) + (side.Eta * side.Eta)),
                0.0,
                1.0
            );
            var off = to - (side * along);
            nearest = Math.Min(nearest, double.Hypot(off.Xi, off.Eta));
        }

        return nearest;
    }

    /// <summary>
    /// The area by the plane's own measure, (1 + ξ² + η²)^(-3/2), integrated outwards in closed form and around by
    /// Simpson's rule: nothing of the spherical excess in it. The signed sum over the sides leaves the outline.
    /// </summary>
    public double AreaByQuadrature()
    {
        const int steps = 400;
        var area = 0.0;
        for (int i = 0, j = points.Length - 1; i < points.Length; j = i++)
        {
            var (a, b) = (points[j], points[i]);
            var sum = 0.0;
            for (var k = 0; k <= steps; k++)
            {
                var p = a + ((b - a) * (k / (double)steps));
                var square = (p.Xi * p.Xi) + (p.Eta * p.Eta);

                // A sector of radius r has 1 - 1/sqrt(1 + r²) of area per radian; the angle grows by cross / r².
                var inner =
                    square > 1e-8
                        ? (1.0 - (1.0 / Math.Sqrt(1.0 + square))) / square
                        : 0.5 - (0.375 * square);
                var cross = (b.Xi * a.Eta) - (a.Xi * b.Eta);
                sum +=
                    inner
                    * cross
                    * (
                        k is 0 or steps ? 1.0
                        : k % 2 == 1 ? 4.0
                        : 2.0
                    );
            }

            area += sum / (3.0 * steps);
        }

        return Math.Abs(area);
    }
}
