using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Areas on the sphere as sums over the arcs of their borders.</summary>
internal static class ArcArea
{
    /// <summary>The area of the triangle between an arc and an apex, with its sign: positive when the apex lies to the left.</summary>
    /// <remarks>
    /// Van Oosterom and Strackee 1983, IEEE Trans. Biomed. Eng. 30, 125: 2 atan2(a·(b×c), 1 + a·b + b·c + c·a). Summed over
    /// a closed border it gives the area to the left, less a whole sphere (4π) when the place opposite the apex lies there.
    /// </remarks>
    public static double Triangle(Vector3D apex, Vector3D from, Vector3D to)
    {
        // From differences, so that a figure of an arcsecond keeps ten digits: the apex drops out of its own product.
        var product = apex.Dot((from - apex).Cross(to - from));
        return 2.0 * Math.Atan2(product, 1.0 + apex.Dot(from) + from.Dot(to) + to.Dot(apex));
    }
}
