using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>
/// Turns four calipers once around a hull and lists every angle at which a fit can be best.
/// </summary>
/// <remarks>
/// <para>
/// Between two events (a side of the hull becomes parallel to the frame) the four corners that touch stay the same, and
/// the needed width and height are <c>A cos θ + B sin θ</c> and <c>C cos θ + D sin θ</c>. Both are concave there, so the
/// larger of two straight functions of them is smallest at an event or where the two are equal, which is
/// <c>P cos θ + Q sin θ = k</c> and has a closed form. No other angle can be best.
/// </para>
/// <para>
/// Rotating calipers (Shamos 1978; Toussaint 1983, Proc. IEEE MELECON): 2n events of a hull with n corners, each once;
/// O(n).
/// </para>
/// </remarks>
internal ref struct Calipers
{
    private const double Quarter = Math.PI / 2.0;

    /// <summary>A crossing this little outside its interval belongs to its end, in radians.</summary>
    private const double Slack = 1e-12;

    private readonly ReadOnlySpan<PlanePoint> hull;
    private readonly FitGoal goal;
    private readonly double radius;
    private readonly List<FitCandidate> found;

    private Calipers(
        ReadOnlySpan<PlanePoint> hull,
        FitGoal goal,
        double radius,
        List<FitCandidate> found
    )
    {
        this.hull = hull;
        this.goal = goal;
        this.radius = radius;
        this.found = found;
    }

    /// <summary>Adds the candidates for every angle from 0 to 180°; none for a single point.</summary>
    /// <param name="hull">The corners, counter-clockwise.</param>
    /// <param name="goal">What the fit makes small.</param>
    /// <param name="radius">
    /// 0 for a fit in this plane. For a fit on the sky the farthest corner's distance from the tangent point: then angles
    /// where both terms are nearly equal are added, too, because on the sky they can be equal there.
    /// </param>
    /// <param name="found">Where the candidates go.</param>
    public static void Turn(
        ReadOnlySpan<PlanePoint> hull,
        FitGoal goal,
        double radius,
        List<FitCandidate> found
    ) => new Calipers(hull, goal, radius, found).Turn();

    /// <summary>
    /// How much the goal can differ between this plane and the one about a place at a distance, both as tangents.
    /// </summary>
    public static double PlaneDifference(FitGoal goal, double radius, double distance)
    {
        var product = radius * distance;
        if (product > 0.2)
        {
            return double.PositiveInfinity;
        }

        var shift = (product * (radius + distance) / (1.0 - product)) + (product * distance / 2.0);

        // Both ends of an extent move by at most the shift; the angle of a candidate changes by as much again.
        return 8.0 * goal.Steepest * shift;
    }

    private readonly void Turn()
    {
        var n = hull.Length;
        if (n < 2)
        {
            return;
        }

        var sides = new double[n];
        for (var i = 0; i < n; i++)
        {
            var side = hull[(i + 1) % n] - hull[i];
            sides[i] = Math.Atan2(side.Eta, side.Xi);
        }

        // Touching corners in the directions right, up, left, down of the frame.
        Span<int> touch = [0, 0, 0, 0];
        FindFirstTouches(touch);
        var theta = 0.0;
        for (var step = 0; step < (2 * n) + 4 && theta < Math.PI; step++)
        {
            var (turn, next) = NextEvent(sides, touch, theta);
            var end = Math.Min(theta + turn, Math.PI);
            AddCrossings(touch, theta, end);
            if (theta + turn > Math.PI)
            {
                return;
            }

            theta = end;
            var from = touch[next];
            var to = (from + 1) % n;
            var kind = next % 2 == 0 ? FitKind.SideAlongHeight : FitKind.SideAlongWidth;
            Add(touch, kind, theta, from, to);
            touch[next] = to;
        }
    }

    /// <summary>The corners touched just after angle 0; of two equally far ones the later in the sense of turning.</summary>
    private readonly void FindFirstTouches(Span<int> touch)
    {
        for (var i = 1; i < hull.Length; i++)
        {
            var p = hull[i];
            Keep(ref touch[0], i, p.Xi, p.Eta, hull[touch[0]].Xi, hull[touch[0]].Eta);
            Keep(ref touch[1], i, p.Eta, -p.Xi, hull[touch[1]].Eta, -hull[touch[1]].Xi);
            Keep(ref touch[2], i, -p.Xi, -p.Eta, -hull[touch[2]].Xi, -hull[touch[2]].Eta);
            Keep(ref touch[3], i, -p.Eta, p.Xi, -hull[touch[3]].Eta, hull[touch[3]].Xi);
        }

        static void Keep(
            ref int best,
            int i,
            double far,
            double later,
            double bestFar,
            double bestLater
        )
        {
            if (far > bestFar || (far == bestFar && later > bestLater))
            {
                best = i;
            }
        }
    }

    /// <summary>How far to turn until the next side lies along the frame, and which caliper meets it.</summary>
    private static (double Turn, int Caliper) NextEvent(
        double[] sides,
        ReadOnlySpan<int> touch,
        double theta
    )
    {
        var least = double.PositiveInfinity;
        var caliper = 0;
        for (var k = 0; k < 4; k++)
        {
            // Caliper k presses along theta + k·90°; it lies along a side whose direction is a quarter turn further.
            var turn = Math.IEEERemainder(sides[touch[k]] - ((k + 1) * Quarter) - theta, Math.Tau);
            if (turn < -1e-9)
            {
                turn += Math.Tau;
            }

            turn = Math.Max(turn, 0.0);
            if (turn < least)
            {
                least = turn;
                caliper = k;
            }
        }

        return (least, caliper);
    }

    private readonly void AddCrossings(ReadOnlySpan<int> touch, double from, double to)
    {
        if (!goal.ComparesBoth)
        {
            return;
        }

        var across = hull[touch[0]] - hull[touch[2]];
        var up = hull[touch[1]] - hull[touch[3]];
        var p = (goal.WidthFactor * across.Xi) - (goal.HeightFactor * up.Eta);
        var q = (goal.WidthFactor * across.Eta) + (goal.HeightFactor * up.Xi);
        var k = goal.HeightOffset - goal.WidthOffset;
        var reach = double.Hypot(p, q);
        var middle = Math.Atan2(q, p);
        var before = found.Count;
        if (reach > 0.0 && Math.Abs(k) <= reach)
        {
            var spread = Math.Acos(k / reach);
            Cross(touch, middle + spread, from, to);
            Cross(touch, middle - spread, from, to);
        }

        if (radius > 0.0 && found.Count == before)
        {
            // The difference of both terms is reach·cos(θ - middle) - k: nearest to zero at an end or at its turning point.
            var turning = Lifted(middle, from, Math.PI);
            NearlyCross(touch, from, (reach * Math.Cos(from - middle)) - k);
            NearlyCross(touch, to, (reach * Math.Cos(to - middle)) - k);
            if (turning < to)
            {
                // Two equal places lie on either side of a turning point, where itself no slope leads to them.
                var difference = (reach * Math.Cos(turning - middle)) - k;
                NearlyCross(touch, (from + turning) / 2.0, difference);
                NearlyCross(touch, (turning + to) / 2.0, difference);
            }
        }
    }

    private readonly void Cross(ReadOnlySpan<int> touch, double theta, double from, double to)
    {
        var turned = Lifted(theta, from - Slack, Math.Tau);
        if (turned <= to + Slack)
        {
            Add(touch, FitKind.BothEqual, Math.Clamp(turned, from, to), 0, 0);
        }
    }

    private readonly void NearlyCross(ReadOnlySpan<int> touch, double theta, double difference)
    {
        var candidate = At(touch, FitKind.BothEqual, theta, 0, 0);
        var distance = double.Hypot(candidate.Centre.Xi, candidate.Centre.Eta);
        if (Math.Abs(difference) <= PlaneDifference(goal, radius, distance))
        {
            found.Add(candidate);
        }
    }

    /// <summary>The first of the angles that repeat with a period, from a least one on.</summary>
    private static double Lifted(double theta, double least, double period) =>
        theta + (period * Math.Ceiling((least - theta) / period));

    private readonly void Add(
        ReadOnlySpan<int> touch,
        FitKind kind,
        double theta,
        int from,
        int to
    ) => found.Add(At(touch, kind, theta, from, to));

    private readonly FitCandidate At(
        ReadOnlySpan<int> touch,
        FitKind kind,
        double theta,
        int from,
        int to
    )
    {
        var (sin, cos) = Math.SinCos(theta);
        var right = Along(hull[touch[0]], cos, sin);
        var top = Along(hull[touch[1]], -sin, cos);
        var left = Along(hull[touch[2]], cos, sin);
        var bottom = Along(hull[touch[3]], -sin, cos);
        var u = (right + left) / 2.0;
        var v = (top + bottom) / 2.0;
        return new(
            kind,
            from,
            to,
            theta,
            goal.Value(right - left, top - bottom),
            new((u * cos) - (v * sin), (u * sin) + (v * cos))
        );
    }

    private static double Along(PlanePoint point, double cos, double sin) =>
        (point.Xi * cos) + (point.Eta * sin);
}
