using Framing.Sky;

namespace Framing.Catalogue;

/// <summary>Everything inside a polygon.</summary>
internal sealed class PolygonRegion : SkyRegion
{
    private readonly SkyPolygon polygon;

    public PolygonRegion(SkyPolygon polygon)
    {
        ArgumentNullException.ThrowIfNull(polygon);
        this.polygon = polygon;
    }

    public override SkyDirection Middle => polygon.Middle;

    public override Angle Radius => polygon.Radius;

    public override bool Contains(SkyDirection direction) => polygon.Contains(direction);

    public override Angle DistanceToBorder(SkyDirection direction)
    {
        var corners = polygon.Corners;
        var nearest = Angle.FromRadians(Math.PI);
        for (int i = 0, j = corners.Count - 1; i < corners.Count; j = i++)
        {
            nearest = Angle.Min(nearest, ToSide(direction, corners[j], corners[i]));
        }

        return nearest;
    }

    /// <summary>The distance from an arc: across it where the foot lies between its ends, else to the nearer end.</summary>
    private static Angle ToSide(SkyDirection direction, SkyDirection from, SkyDirection to)
    {
        var p = direction.Vector;
        var normal = from.Vector.Cross(to.Vector);
        var length = normal.Length;
        if (
            length > 0.0
            && normal.Cross(from.Vector).Dot(p) >= 0.0
            && to.Vector.Cross(normal).Dot(p) >= 0.0
        )
        {
            return Angle.FromRadians(Math.Asin(Math.Min(1.0, Math.Abs(normal.Dot(p)) / length)));
        }

        return Angle.Min(direction.SeparationTo(from), direction.SeparationTo(to));
    }
}
