using Framing.Sky;
using NetTopologySuite.Algorithm;

namespace Framing.Mosaics;

/// <summary>The smallest convex figure around points of a tangent plane: what a rubber band around pins would show.</summary>
/// <remarks>
/// <para>Great circles are straight lines in the plane, so this is also the convex hull on the sky.</para>
/// <para>
/// Andrew's monotone chain (Andrew 1979, Inf. Process. Lett. 9, 216), O(n log n). Which side of a line a point lies on
/// is decided in extended precision where double precision cannot tell, so that no corner is lost and none is added.
/// </para>
/// </remarks>
public static class ConvexHull
{
    /// <summary>The corners of the hull.</summary>
    /// <param name="points">One or more points, finite, in any order; repeated ones do not matter.</param>
    /// <returns>
    /// The corners counter-clockwise (from +xi towards +eta), the leftmost first, no corner on a straight side: two ends
    /// when all points lie on a line, one point when all are the same.
    /// </returns>
    /// <exception cref="ArgumentException">No point is given, or one is not finite.</exception>
    public static PlanePoint[] Of(ReadOnlySpan<PlanePoint> points)
    {
        var indices = IndicesOf(points);
        var hull = new PlanePoint[indices.Length];
        for (var i = 0; i < hull.Length; i++)
        {
            hull[i] = points[indices[i]];
        }

        return hull;
    }

    /// <summary>The places of the hull's corners in the list of points, in the order of <see cref="Of"/>.</summary>
    internal static int[] IndicesOf(ReadOnlySpan<PlanePoint> points)
    {
        var order = Sorted(points);
        if (order.Length < 3)
        {
            return order;
        }

        // The lower side from left to right, then the upper side back; each keeps only turns to the left.
        var hull = new int[order.Length + 1];
        var count = 0;
        foreach (var index in order)
        {
            count = Push(points, hull, count, floor: 1, index);
        }

        var lower = count;
        for (var i = order.Length - 2; i >= 0; i--)
        {
            count = Push(points, hull, count, lower, order[i]);
        }

        return hull[..(count - 1)];
    }

    private static int Push(
        ReadOnlySpan<PlanePoint> points,
        int[] hull,
        int count,
        int floor,
        int index
    )
    {
        while (
            count > floor
            && !TurnsLeft(points[hull[count - 2]], points[hull[count - 1]], points[index])
        )
        {
            count--;
        }

        hull[count] = index;
        return count + 1;
    }

    private static bool TurnsLeft(PlanePoint a, PlanePoint b, PlanePoint c) =>
        CGAlgorithmsDD.OrientationIndex(a.Xi, a.Eta, b.Xi, b.Eta, c.Xi, c.Eta) > 0;

    /// <summary>The points from left to right (from below where equal), each place once.</summary>
    private static int[] Sorted(ReadOnlySpan<PlanePoint> points)
    {
        if (points.IsEmpty)
        {
            throw new ArgumentException("A hull needs at least one point.", nameof(points));
        }

        var order = new int[points.Length];
        var keys = new (double Xi, double Eta)[points.Length];
        for (var i = 0; i < order.Length; i++)
        {
            var point = points[i];
            if (!double.IsFinite(point.Xi) || !double.IsFinite(point.Eta))
            {
                throw new ArgumentException(
                    FormattableString.Invariant(
                        $"Point {i} of the hull is not finite: {point.Xi}, {point.Eta}."
                    ),
                    nameof(points)
                );
            }

            order[i] = i;
            keys[i] = (point.Xi, point.Eta);
        }

        Array.Sort(keys, order);
        var kept = 1;
        for (var i = 1; i < order.Length; i++)
        {
            if (keys[i] != keys[i - 1])
            {
                order[kept++] = order[i];
            }
        }

        return order[..kept];
    }
}
