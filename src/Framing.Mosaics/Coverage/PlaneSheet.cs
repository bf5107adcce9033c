using Framing.Sky;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Utilities;
using NetTopologySuite.Operation.OverlayNG;

namespace Framing.Mosaics;

/// <summary>
/// Figures on the sky laid into one tangent plane: their union, its border, and its area on the sphere.
/// </summary>
/// <remarks>
/// Great circles are straight in the plane, so what is done with polygons there holds on the sky without sampling. Only an
/// area has to go back to the sphere.
/// </remarks>
internal sealed class PlaneSheet(TangentPlane plane)
{
    private static readonly GeometryFactory Factory = new();

    public static Geometry Nothing => Factory.CreatePolygon();

    /// <summary>A figure from its corners; corners that cross themselves are sorted out.</summary>
    public Geometry Figure(IEnumerable<SkyDirection> corners)
    {
        List<Coordinate> ring =
        [
            .. corners.Select(plane.Project).Select(p => new Coordinate(p.Xi, p.Eta)),
        ];
        ring.Add(ring[0].Copy());
        var polygon = Factory.CreatePolygon([.. ring]);
        return polygon.IsValid ? polygon : GeometryFixer.Fix(polygon);
    }

    public static Geometry Union(IEnumerable<Geometry> figures)
    {
        Geometry[] all = [.. figures.Where(figure => !figure.IsEmpty)];
        return all.Length == 0 ? Nothing : OverlayNGRobust.Union(all);
    }

    /// <summary>The rings of a figure, and whether each is the border of a hole.</summary>
    public static IEnumerable<(CoordinateSequence Points, bool Hole)> Rings(Geometry figure) =>
        Polygons(figure)
            .SelectMany(polygon =>
                polygon
                    .InteriorRings.Select(ring => (ring.CoordinateSequence, true))
                    .Prepend((polygon.ExteriorRing.CoordinateSequence, false))
            );

    /// <summary>The area of a figure on the sphere.</summary>
    public static SolidAngle Area(Geometry figure) =>
        SolidAngle.FromSteradians(
            Polygons(figure)
                .Sum(polygon => Excess(polygon.ExteriorRing) - polygon.InteriorRings.Sum(Excess))
        );

    private static IEnumerable<Polygon> Polygons(Geometry figure)
    {
        for (var i = 0; i < figure.NumGeometries; i++)
        {
            if (figure.GetGeometryN(i) is Polygon { IsEmpty: false } polygon)
            {
                yield return polygon;
            }
        }
    }

    /// <summary>Spherical excess of a ring: the triangles of its sides with the tangent point, by their signs.</summary>
    /// <remarks>
    /// Van Oosterom and Strackee 1983 with the tangent point (0, 0, 1) as one corner: for sides from (x, y) to (x', y'),
    /// 2 atan2(x·y' - y·x', r·r' + r + r' + x·x' + y·y' + 1), r² = 1 + x² + y².
    /// </remarks>
    private static double Excess(LineString ring)
    {
        var points = ring.CoordinateSequence;
        var sum = 0.0;
        for (var i = 1; i < points.Count; i++)
        {
            double x = points.GetX(i - 1),
                y = points.GetY(i - 1),
                u = points.GetX(i),
                v = points.GetY(i);
            double r = Math.Sqrt(1.0 + (x * x) + (y * y)),
                s = Math.Sqrt(1.0 + (u * u) + (v * v));
            sum += 2.0 * Math.Atan2((x * v) - (y * u), (r * s) + r + s + (x * u) + (y * v) + 1.0);
        }

        return Math.Abs(sum);
    }
}
