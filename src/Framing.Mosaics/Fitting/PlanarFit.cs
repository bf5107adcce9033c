using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Lays a frame over points of one tangent plane.</summary>
/// <remarks>
/// <para>
/// The answers are exact: every angle at which a fit can be best is found in closed form (see the notes in
/// <c>Calipers.cs</c>), so nothing is searched for and nothing can be missed. O(n log n) for the hull, O(n) after it.
/// </para>
/// <para>
/// Of equally good angles (to 1e-12 of the frame) the one nearest <c>near</c> modulo 180° is taken, then the one that is
/// reached by turning from +xi towards +eta. A single point fits as well at every angle and takes <c>near</c> itself.
/// </para>
/// </remarks>
public static class PlanarFit
{
    /// <summary>The place where a frame leaves the largest margin on its tighter pair of sides.</summary>
    /// <param name="points">One or more points, finite.</param>
    /// <param name="width">Width of the frame, a tangent, more than 0.</param>
    /// <param name="height">Height of the frame, a tangent, more than 0.</param>
    /// <param name="near">The direction of the width to prefer among equals, from +xi towards +eta.</param>
    /// <returns>The frame; its margin is negative when it cannot hold the points at any angle.</returns>
    /// <exception cref="ArgumentException">No point is given, or one is not finite, or a side is not a positive number.</exception>
    public static PlanarFrame LargestMargin(
        ReadOnlySpan<PlanePoint> points,
        double width,
        double height,
        Angle near = default
    )
    {
        CheckSides(width, height);
        return Best(points, width, height, FitGoal.LargestMargin(width, height), near);
    }

    /// <summary>The place where the smallest frame of a shape holds the points.</summary>
    /// <param name="points">One or more points, finite.</param>
    /// <param name="width">Width of the frame, more than 0; only its ratio to the height decides the place.</param>
    /// <param name="height">Height of the frame, more than 0.</param>
    /// <param name="near">The direction of the width to prefer among equals, from +xi towards +eta.</param>
    /// <returns>The frame; its scale says how large it has to be.</returns>
    /// <exception cref="ArgumentException">No point is given, or one is not finite, or a side is not a positive number.</exception>
    public static PlanarFrame SmallestScale(
        ReadOnlySpan<PlanePoint> points,
        double width,
        double height,
        Angle near = default
    )
    {
        CheckSides(width, height);
        return Best(points, width, height, FitGoal.SmallestScale(width, height), near);
    }

    /// <summary>The best place of a frame at an angle: the middle of the points both ways.</summary>
    /// <param name="points">One or more points, finite.</param>
    /// <param name="width">Width of the frame, a tangent, more than 0.</param>
    /// <param name="height">Height of the frame, a tangent, more than 0.</param>
    /// <param name="angle">Direction of the width, from +xi towards +eta.</param>
    /// <returns>The frame.</returns>
    /// <exception cref="ArgumentException">No point is given, or one is not finite, or a side is not a positive number.</exception>
    public static PlanarFrame AtAngle(
        ReadOnlySpan<PlanePoint> points,
        double width,
        double height,
        Angle angle
    )
    {
        CheckSides(width, height);
        return Lay(ConvexHull.Of(points), width, height, angle.Radians);
    }

    internal static void CheckSides(double width, double height)
    {
        CheckSide(width, nameof(width));
        CheckSide(height, nameof(height));
    }

    private static void CheckSide(double side, string name)
    {
        if (!(side > 0.0 && double.IsFinite(side)))
        {
            throw new ArgumentOutOfRangeException(
                name,
                side,
                "A side of a frame is a finite tangent above 0."
            );
        }
    }

    private static PlanarFrame Best(
        ReadOnlySpan<PlanePoint> points,
        double width,
        double height,
        FitGoal goal,
        Angle near
    )
    {
        var hull = ConvexHull.Of(points);
        var present = Lay(hull, width, height, near.Radians);
        var found = new List<FitCandidate>((4 * hull.Length) + 4);
        Calipers.Turn(hull, goal, radius: 0.0, found);
        var presentValue = goal.Value(present.NeededWidth, present.NeededHeight);
        var limit =
            found.Aggregate(presentValue, (v, c) => Math.Min(v, c.Value)) + goal.TieTolerance;
        if (presentValue <= limit)
        {
            return present;
        }

        var theta = double.NaN;
        var least = double.PositiveInfinity;
        foreach (var candidate in found.Where(c => c.Value <= limit))
        {
            var turn = Math.IEEERemainder(candidate.Theta - near.Radians, Math.PI);
            if (Closer(turn, least))
            {
                least = turn;
                theta = candidate.Theta;
            }
        }

        return Lay(hull, width, height, theta);
    }

    /// <summary>True when a turn is shorter than the best so far, or as short and the positive one of the two.</summary>
    internal static bool Closer(double turn, double best)
    {
        const double Same = 1e-12;
        var gain = Math.Abs(best) - Math.Abs(turn);
        return gain > Same || (gain > -Same && turn > 0.0 && best < 0.0);
    }

    private static PlanarFrame Lay(
        IReadOnlyList<PlanePoint> hull,
        double width,
        double height,
        double theta
    )
    {
        var (sin, cos) = Math.SinCos(theta);
        double left = double.PositiveInfinity,
            bottom = double.PositiveInfinity,
            right = double.NegativeInfinity,
            top = double.NegativeInfinity;
        foreach (var point in hull)
        {
            var u = (point.Xi * cos) + (point.Eta * sin);
            var v = (point.Eta * cos) - (point.Xi * sin);
            (left, right) = (Math.Min(left, u), Math.Max(right, u));
            (bottom, top) = (Math.Min(bottom, v), Math.Max(top, v));
        }

        var (midU, midV) = ((left + right) / 2.0, (bottom + top) / 2.0);
        var turned = theta - (Math.PI * Math.Floor(theta / Math.PI));
        return new(
            width,
            height,
            Angle.FromRadians(turned >= Math.PI ? 0.0 : turned),
            new((midU * cos) - (midV * sin), (midU * sin) + (midV * cos)),
            right - left,
            top - bottom
        );
    }
}
