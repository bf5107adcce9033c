using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Lays frames over an outline on the sky; made once per outline, asked for any number of frames.</summary>
/// <remarks>
/// <para>
/// The candidates come from the calipers in the plane about a place near the best centre. Each that could still be the
/// best on the sky is settled there in its own plane, so that no rounding of "nearly flat" decides. How far the sky can
/// differ from the plane is bounded: moving the tangent point by d changes the coordinates of points within r of it by
/// less than r·d·(r + d)/(1 - r·d) + r·d²/2.
/// </para>
/// </remarks>
internal sealed class SphereFit
{
    /// <summary>Nearer to a pole than this many radii of the outline, one position angle can belong to several frames.</summary>
    private const double PoleReach = 3.0;

    /// <summary>Frames tried there over half a turn.</summary>
    private const int PoleStarts = 48;

    private readonly Vector3D[] hull;
    private readonly FrameAxes start;

    public SphereFit(SkyOutline outline)
    {
        start = FrameAxes.At(outline.Middle, PositionAngle.North);
        var points = new PlanePoint[outline.Corners.Count];
        for (var i = 0; i < points.Length; i++)
        {
            points[i] = FrameReach.Project(outline.Corners[i].Vector, start);
        }

        // Projection keeps straight lines straight: the corners of the hull are the same in every plane.
        hull = [.. ConvexHull.IndicesOf(points).Select(i => outline.Corners[i].Vector)];
    }

    /// <summary>The best frame by a goal.</summary>
    public SphereFrame Best(FitGoal goal, PositionAngle near)
    {
        if (hull.Length == 1)
        {
            return AtAngle(goal, near, FrameAxes.At(SkyDirection.FromVector(hull[0]), near));
        }

        var found = new List<FitCandidate>((6 * hull.Length) + 4);
        var flat = start;
        Turn(flat, goal, found);
        for (var round = 0; round < 2; round++)
        {
            flat = Started(flat, found.MinBy(c => c.Value));
            flat = FrameAxes.At(flat.Centre, PositionAngle.North);
            Turn(flat, goal, found);
        }

        return Choose(flat, goal, found, near);
    }

    /// <summary>Every frame at a position angle that has the outline in its middle both ways.</summary>
    /// <remarks>
    /// There is one, except for outlines about as wide as their distance from a pole: there the position angle changes so
    /// fast from place to place that two or three places can have the same one.
    /// </remarks>
    public IReadOnlyList<SphereFrame> AtAngle(FitGoal goal, PositionAngle angle)
    {
        var toPole = Math.PI / 2.0 - Math.Abs(start.Centre.Declination.Radians);
        if (Math.Atan(Radius(start)) * PoleReach < toPole)
        {
            return [AtAngle(goal, angle, start)];
        }

        // Turn a frame half round, always with the outline in its middle, and settle at the angle from everywhere.
        var found = new SphereFrame[PoleStarts];
        for (var i = 0; i < PoleStarts; i++)
        {
            var turned = start.Moved(0.0, 0.0, Math.PI * i / PoleStarts);
            var middle = Settled(goal, Bare(FitKind.Unturned), turned, angle);
            found[i] = AtAngle(goal, angle, middle.Axes);
        }

        return found;
    }

    private SphereFrame AtAngle(FitGoal goal, PositionAngle angle, FrameAxes from) =>
        Settled(goal, Bare(FitKind.AngleGiven), from, angle);

    private static FitCandidate Bare(FitKind kind) => new(kind, 0, 0, 0.0, 0.0, default);

    private SphereFrame Choose(
        FrameAxes flat,
        FitGoal goal,
        List<FitCandidate> found,
        PositionAngle near
    )
    {
        var radius = Radius(flat);
        found.Sort((a, b) => a.Value.CompareTo(b.Value));
        var settled = new List<SphereFrame>();
        var best = double.PositiveInfinity;
        foreach (var candidate in found)
        {
            var distance = double.Hypot(candidate.Centre.Xi, candidate.Centre.Eta);
            if (
                candidate.Value - Calipers.PlaneDifference(goal, radius, distance)
                <= best + goal.TieTolerance
            )
            {
                var frame = Settled(goal, candidate, Started(flat, candidate), near);
                settled.Add(frame);
                best = Math.Min(best, frame.Value);
            }
        }

        // Where the camera stands now may be as good as anything: then nothing needs to be turned.
        var present = AtAngle(goal, near, settled.MinBy(frame => frame.Value).Axes);
        if (present.Value <= best + goal.TieTolerance)
        {
            return present;
        }

        SphereFrame? chosen = null;
        var least = double.PositiveInfinity;
        foreach (var frame in settled.Where(frame => frame.Value <= best + goal.TieTolerance))
        {
            var turn = near.FrameTurnTo(frame.Axes.Up).Radians;
            if (chosen is null || PlanarFit.Closer(turn, least))
            {
                (chosen, least) = (frame, turn);
            }
        }

        return chosen!.Value;
    }

    private void Turn(FrameAxes flat, FitGoal goal, List<FitCandidate> found)
    {
        var points = new PlanePoint[hull.Length];
        for (var i = 0; i < points.Length; i++)
        {
            points[i] = FrameReach.Project(hull[i], flat);
        }

        found.Clear();
        Calipers.Turn(points, goal, Radius(flat), found);
    }

    private SphereFrame Settled(
        FitGoal goal,
        FitCandidate candidate,
        FrameAxes from,
        PositionAngle given
    )
    {
        var axes = FramePolish.Settle(hull, goal, candidate, from, given);
        var reach = FrameReach.Of(hull, axes);
        return reach.InFront
            ? new(
                axes,
                reach.NeededWidth,
                reach.NeededHeight,
                goal.Value(reach.NeededWidth, reach.NeededHeight)
            )
            : new(axes, double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity);
    }

    /// <summary>A candidate's frame as the flat plane has it.</summary>
    private FrameAxes Started(FrameAxes flat, FitCandidate candidate)
    {
        // Wide outlines are flattened so strongly that the middle in the plane can lie too far out: go part of the way.
        var part = 1.0;
        FrameAxes moved;
        do
        {
            moved = flat.Moved(
                candidate.Centre.Xi * part,
                candidate.Centre.Eta * part,
                candidate.Theta
            );
            part /= 2.0;
        } while (part > 1e-6 && !FrameReach.Of(hull, moved).InFront);

        return moved;
    }

    private double Radius(FrameAxes flat)
    {
        var cosine = hull.Min(corner => corner.Dot(flat.Z));
        return Math.Sqrt(Math.Max(0.0, (1.0 / (cosine * cosine)) - 1.0));
    }
}
