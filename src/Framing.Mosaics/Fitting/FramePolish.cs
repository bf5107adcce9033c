using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>
/// Moves a frame on the sky until the outline stands in its middle both ways in the frame's own plane and the condition
/// that makes its angle the best one holds there, too.
/// </summary>
/// <remarks>
/// <para>
/// Projecting again about each new centre would come to the same place; three equations in three unknowns (two shifts and
/// a turn) solved by Newton's method come there in two or three rounds to the last digits, and from wide fields, too.
/// </para>
/// <para>
/// A small shift (d, e) and turn w of the frame moves a point of its plane from (u, v) to
/// (u - d(1 + u²) - e·u·v + w·v, v - d·u·v - e(1 + v²) - w·u).
/// </para>
/// </remarks>
internal ref struct FramePolish
{
    private const int MostRounds = 60;

    /// <summary>Half the last digit of a tangent near 1: nothing is left to gain.</summary>
    private const double Done = 1e-16;

    /// <summary>Below this a step that does not help has met the rounding of the tangents.</summary>
    private const double Rounding = 1e-13;

    /// <summary>The longest step of one round: beyond it the straight-line forecast means little.</summary>
    private const double LongestStep = 0.3;

    private readonly Vector3D[] hull;
    private readonly FitGoal goal;
    private readonly FitCandidate candidate;
    private readonly PositionAngle given;
    private readonly Span<double> rows;

    private FramePolish(
        Vector3D[] hull,
        FitGoal goal,
        FitCandidate candidate,
        PositionAngle given,
        Span<double> rows
    )
    {
        this.hull = hull;
        this.goal = goal;
        this.candidate = candidate;
        this.given = given;
        this.rows = rows;
    }

    /// <summary>The frame of a candidate on the sky.</summary>
    /// <param name="hull">Corners of the outline's hull.</param>
    /// <param name="goal">What the fit makes small.</param>
    /// <param name="candidate">The condition that holds at the best angle.</param>
    /// <param name="start">A frame near the answer.</param>
    /// <param name="given">The position angle to keep where the angle is given; else of no meaning.</param>
    public static FrameAxes Settle(
        Vector3D[] hull,
        FitGoal goal,
        FitCandidate candidate,
        FrameAxes start,
        PositionAngle given
    )
    {
        Span<double> equations = stackalloc double[12];
        return new FramePolish(hull, goal, candidate, given, equations).Settle(start);
    }

    private readonly FrameAxes Settle(FrameAxes axes)
    {
        axes = Kept(axes);
        var miss = Fill(axes);
        if (
            candidate.Kind == FitKind.BothEqual
            && Solve(out var d, out var e, out _, turning: false)
        )
        {
            // Where both terms are equal is told well only by a frame that already stands about right.
            axes = axes.Moved(d, e, 0.0);
            miss = Fill(axes);
        }

        for (var round = 0; round < MostRounds && miss > Done; round++)
        {
            if (!Solve(out var x, out var y, out var turn, turning: true))
            {
                return axes;
            }

            var length = Math.Max(Math.Max(Math.Abs(x), Math.Abs(y)), Math.Abs(turn));
            var part = length > LongestStep ? LongestStep / length : 1.0;

            // Where other corners begin to touch, the forecast can overshoot: go a shorter way along it.
            FrameAxes next;
            double nextMiss;
            do
            {
                next = Kept(axes.Moved(x * part, y * part, turn * part));
                nextMiss = Fill(next);
                part /= 2.0;
            } while (!(nextMiss < miss) && miss > Rounding && part * length > 1e-15);

            if (!(nextMiss < miss))
            {
                return axes;
            }

            (axes, miss) = (next, nextMiss);
        }

        return axes;
    }

    private readonly FrameAxes Kept(FrameAxes axes) =>
        candidate.Kind == FitKind.AngleGiven ? FrameAxes.At(axes.Centre, given) : axes;

    /// <summary>Writes the three equations at a frame and says by how much the worst one is missed.</summary>
    private readonly double Fill(FrameAxes axes)
    {
        var reach = FrameReach.Of(hull, axes);
        if (!reach.InFront)
        {
            return double.PositiveInfinity;
        }

        var (r, t, l, b) = (reach.Right, reach.Top, reach.Left, reach.Bottom);
        Row(
            0,
            (r.Xi + l.Xi) / 2.0,
            MeanOfU(r, l),
            MeanOfU(r, l, along: false),
            (r.Eta + l.Eta) / 2.0
        );
        Row(
            1,
            (t.Eta + b.Eta) / 2.0,
            MeanOfV(t, b),
            MeanOfV(t, b, along: false),
            -(t.Xi + b.Xi) / 2.0
        );
        FillThird(axes, reach);
        return Math.Max(Math.Max(Math.Abs(rows[3]), Math.Abs(rows[7])), Math.Abs(rows[11]));
    }

    private static double MeanOfU(PlanePoint p, PlanePoint q, bool along = true) =>
        along
            ? 1.0 + (((p.Xi * p.Xi) + (q.Xi * q.Xi)) / 2.0)
            : ((p.Xi * p.Eta) + (q.Xi * q.Eta)) / 2.0;

    private static double MeanOfV(PlanePoint p, PlanePoint q, bool along = true) =>
        along
            ? ((p.Xi * p.Eta) + (q.Xi * q.Eta)) / 2.0
            : 1.0 + (((p.Eta * p.Eta) + (q.Eta * q.Eta)) / 2.0);

    private readonly void FillThird(FrameAxes axes, FrameReach reach)
    {
        switch (candidate.Kind)
        {
            case FitKind.BothEqual:
            {
                var (r, t, l, b) = (reach.Right, reach.Top, reach.Left, reach.Bottom);
                var (fw, fh) = (
                    goal.WidthFactor / goal.Steepest,
                    goal.HeightFactor / goal.Steepest
                );
                Row(
                    2,
                    (fw * (r.Xi - l.Xi))
                        - (fh * (t.Eta - b.Eta))
                        + ((goal.WidthOffset - goal.HeightOffset) / goal.Steepest),
                    (fw * ((r.Xi * r.Xi) - (l.Xi * l.Xi)))
                        - (fh * ((t.Xi * t.Eta) - (b.Xi * b.Eta))),
                    (fw * ((r.Xi * r.Eta) - (l.Xi * l.Eta)))
                        - (fh * ((t.Eta * t.Eta) - (b.Eta * b.Eta))),
                    (fw * (r.Eta - l.Eta)) + (fh * (t.Xi - b.Xi))
                );
                break;
            }

            case FitKind.SideAlongWidth:
            {
                var (p, q) = Ends(axes);
                Row(
                    2,
                    p.Eta - q.Eta,
                    (p.Xi * p.Eta) - (q.Xi * q.Eta),
                    (p.Eta * p.Eta) - (q.Eta * q.Eta),
                    q.Xi - p.Xi
                );
                break;
            }

            case FitKind.SideAlongHeight:
            {
                var (p, q) = Ends(axes);
                Row(
                    2,
                    p.Xi - q.Xi,
                    (p.Xi * p.Xi) - (q.Xi * q.Xi),
                    (p.Xi * p.Eta) - (q.Xi * q.Eta),
                    p.Eta - q.Eta
                );
                break;
            }

            case FitKind.Unturned:
                Row(2, 0.0, 0.0, 0.0, -1.0);
                break;

            default:
            {
                // Going east by d turns north by d·tan(declination) against a frame that is moved without turning.
                var centre = axes.Centre;
                var east = centre.East;
                var tan = Math.Tan(centre.Declination.Radians);
                Row(2, 0.0, -tan * axes.X.Dot(east), -tan * axes.Y.Dot(east), -1.0);
                break;
            }
        }
    }

    private readonly (PlanePoint From, PlanePoint To) Ends(FrameAxes axes) =>
        (
            FrameReach.Project(hull[candidate.From], axes),
            FrameReach.Project(hull[candidate.To], axes)
        );

    /// <summary>One equation: value - perX·d - perY·e + perTurn·w = 0.</summary>
    private readonly void Row(int row, double value, double perX, double perY, double perTurn)
    {
        rows[(4 * row) + 0] = perX;
        rows[(4 * row) + 1] = perY;
        rows[(4 * row) + 2] = -perTurn;
        rows[(4 * row) + 3] = value;
    }

    /// <summary>Cramer's rule; without a turn where the third equation says nothing.</summary>
    private readonly bool Solve(out double x, out double y, out double turn, bool turning)
    {
        Vector3D a = new(rows[0], rows[4], rows[8]),
            b = new(rows[1], rows[5], rows[9]),
            c = new(rows[2], rows[6], rows[10]),
            value = new(rows[3], rows[7], rows[11]);
        var all = a.Dot(b.Cross(c));
        x = value.Dot(b.Cross(c)) / all;
        y = a.Dot(value.Cross(c)) / all;
        turn = a.Dot(b.Cross(value)) / all;
        if (turning && double.IsFinite(x) && double.IsFinite(y) && double.IsFinite(turn))
        {
            return true;
        }

        turn = 0.0;
        var two = (a.X * b.Y) - (b.X * a.Y);
        x = ((value.X * b.Y) - (b.X * value.Y)) / two;
        y = ((a.X * value.Y) - (value.X * a.Y)) / two;
        return double.IsFinite(x) && double.IsFinite(y);
    }
}
