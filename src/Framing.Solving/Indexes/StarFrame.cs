using Framing.Sky;

namespace Framing.Solving;

/// <summary>The tangent plane at a star, as plain numbers: x to the east, y to the north.</summary>
internal readonly struct StarFrame
{
    private readonly Vector3D centre;
    private readonly Vector3D east;
    private readonly Vector3D north;

    public StarFrame(ReferenceStars stars, int star)
    {
        var (sin, cos) = Math.SinCos(stars.RightAscension[star]);
        centre = stars.Vectors[star];
        east = new(-sin, cos, 0.0);
        north = centre.Cross(east);
    }

    /// <summary>The place in the plane; the star must be less than 90 degrees away.</summary>
    public (double X, double Y) Project(Vector3D direction)
    {
        var inverse = 1.0 / direction.Dot(centre);
        return (direction.Dot(east) * inverse, direction.Dot(north) * inverse);
    }
}
