using Framing.Sky;

namespace Framing.Mosaics.Tests;

/// <summary>
/// What a mosaic covers at one place, by code of the test's own: dot products with the panels' axes, facing sides in the
/// panels' own frames, and for enclosed sky the number of times that the way out crosses each connected border.
/// </summary>
internal sealed class SampledMosaic
{
    private readonly Eye[] eyes;
    private readonly List<Strip> strips = [];
    private readonly double wide;
    private readonly double high;
    private Vector3D far;
    private readonly List<Fence> fences = [];

    public SampledMosaic(
        IReadOnlyList<CameraPose> poses,
        IReadOnlyList<(int First, int Second, bool Row)> neighbours,
        FieldShape field,
        bool mirrored,
        SkyDirection middle
    )
    {
        (wide, high) = (field.TangentWidth / 2.0, field.TangentHeight / 2.0);
        eyes = [.. poses.Select(pose => new Eye(pose, mirrored, wide, high))];
        foreach (var (first, second, row) in neighbours)
        {
            AddStrip(eyes[first], eyes[second], row, 1.0);
            AddStrip(eyes[second], eyes[first], row, -1.0);
        }

        // A little aside of the opposite place, so that no path to it runs along a side.
        far = Unit(-middle.Vector + (new Vector3D(0.31, 0.17, 0.23) * 1e-3 * Math.Min(wide, high)));
        BuildFences();
    }

    /// <summary>
    /// Where panels cover the far side of the sky too, what is bare over more than half of the sky is the outside: looks
    /// for it among even draws over the whole sphere.
    /// </summary>
    public void FindOutside(IReadOnlyList<Vector3D> draws)
    {
        if (Depth(far) == 0)
        {
            return;
        }

        var bare = draws.Where(draw => Depth(draw) == 0).ToList();
        foreach (var one in bare.Take(20))
        {
            if (
                2 * bare.Count(other => !fences.Any(fence => fence.Parts(other, one)))
                > draws.Count
            )
            {
                far = one;
                return;
            }
        }
    }

    /// <summary>How many panels cover a place.</summary>
    public int Depth(Vector3D at)
    {
        var depth = 0;
        foreach (var eye in eyes)
        {
            depth += eye.Sees(at) ? 1 : 0;
        }

        return depth;
    }

    /// <summary>True when a bare place lies between the facing sides of neighbours.</summary>
    public bool BetweenSides(Vector3D at)
    {
        foreach (var strip in strips)
        {
            if (strip.Holds(at))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True when every way from a bare place to the far side of the sky is shut.</summary>
    public bool Enclosed(Vector3D at)
    {
        foreach (var fence in fences)
        {
            if (fence.Parts(at, far))
            {
                return true;
            }
        }

        return false;
    }

    private void AddStrip(Eye from, Eye to, bool row, double sign)
    {
        // From this panel's frame: x towards the neighbour, y along the side.
        var (x, y) = row ? (from.Right, from.Up) : (-from.Up, from.Right);
        x *= sign;
        var (half, side) = row ? (wide, high) : (high, wide);
        var (tx, ty) = row ? (to.Right, to.Up) : (-to.Up, to.Right);
        tx *= sign;
        var p = to.Forward - (tx * half) + (ty * side);
        var q = to.Forward - (tx * half) - (ty * side);
        if (p.Dot(from.Forward) > 0.0 && q.Dot(from.Forward) > 0.0)
        {
            strips.Add(
                new(
                    from.Forward,
                    x,
                    y,
                    half,
                    side,
                    (p.Dot(x) / p.Dot(from.Forward), p.Dot(y) / p.Dot(from.Forward)),
                    (q.Dot(x) / q.Dot(from.Forward), q.Dot(y) / q.Dot(from.Forward))
                )
            );
        }
    }

    /// <summary>All pieces of sides that no other panel covers, joined where their ends meet.</summary>
    private void BuildFences()
    {
        List<(Vector3D From, Vector3D To)> arcs = [];
        foreach (var eye in eyes)
        {
            for (var k = 0; k < 4; k++)
            {
                var (a, b) = (eye.Corners[k], eye.Corners[(k + 1) % 4]);
                List<double> stops = [0.0, 1.0];
                foreach (var other in eyes)
                {
                    for (var m = 0; other != eye && m < 4; m++)
                    {
                        var normal = other.Corners[m].Cross(other.Corners[(m + 1) % 4]);
                        double fa = normal.Dot(a),
                            fb = normal.Dot(b);
                        if (fa >= 0.0 != fb >= 0.0)
                        {
                            stops.Add(fa / (fa - fb));
                        }
                    }
                }

                stops.Sort();
                for (var s = 1; s < stops.Count; s++)
                {
                    var mid = Along(a, b, (stops[s - 1] + stops[s]) / 2.0);
                    if (
                        stops[s] - stops[s - 1] > 1e-13
                        && !eyes.Any(other => other != eye && other.Sees(mid))
                    )
                    {
                        arcs.Add((Along(a, b, stops[s - 1]), Along(a, b, stops[s])));
                    }
                }
            }
        }

        var open = Enumerable.Range(0, arcs.Count).ToHashSet();
        while (open.Count > 0)
        {
            List<(Vector3D From, Vector3D To)> fence = [];
            var queue = new Queue<int>();
            Take(open.First());
            while (queue.TryDequeue(out var next))
            {
                var arc = arcs[next];
                fence.Add(arc);
                foreach (var i in open.ToList())
                {
                    if (
                        Touch(arcs[i].From, arc.To)
                        || Touch(arcs[i].To, arc.From)
                        || Touch(arcs[i].From, arc.From)
                        || Touch(arcs[i].To, arc.To)
                    )
                    {
                        Take(i);
                    }
                }
            }

            fences.Add(new([.. fence]));

            void Take(int i)
            {
                open.Remove(i);
                queue.Enqueue(i);
            }
        }

        bool Touch(Vector3D p, Vector3D q) =>
            (p - q).Length < 1e-9 * Math.Min(1.0, Math.Min(wide, high));
    }

    private static Vector3D Along(Vector3D a, Vector3D b, double t) =>
        Unit((a * (1.0 - t)) + (b * t));

    private static Vector3D Unit(Vector3D v) => v * (1.0 / v.Length);

    /// <summary>One camera.</summary>
    private sealed class Eye
    {
        private readonly double wide;
        private readonly double high;

        public Eye(CameraPose pose, bool mirrored, double wide, double high)
        {
            (this.wide, this.high) = (wide, high);
            Forward = pose.Centre.Vector;
            var (sin, cos) = Math.SinCos(pose.PositionAngle.Radians);
            Up = (pose.Centre.North * cos) + (pose.Centre.East * sin);
            Right =
                ((pose.Centre.North * sin) - (pose.Centre.East * cos)) * (mirrored ? -1.0 : 1.0);
            Corners =
            [
                Unit(Forward - (Right * wide) + (Up * high)),
                Unit(Forward + (Right * wide) + (Up * high)),
                Unit(Forward + (Right * wide) - (Up * high)),
                Unit(Forward - (Right * wide) - (Up * high)),
            ];
        }

        public Vector3D Forward { get; }

        public Vector3D Up { get; }

        public Vector3D Right { get; }

        public Vector3D[] Corners { get; }

        public bool Sees(Vector3D at)
        {
            var depth = at.Dot(Forward);
            return Math.Abs(at.Dot(Right)) <= depth * wide && Math.Abs(at.Dot(Up)) <= depth * high;
        }
    }

    /// <summary>What lies between a panel's side and its neighbour's, in the panel's frame.</summary>
    private sealed record Strip(
        Vector3D Forward,
        Vector3D X,
        Vector3D Y,
        double Half,
        double Side,
        (double X, double Y) P,
        (double X, double Y) Q
    )
    {
        public bool Holds(Vector3D at)
        {
            var depth = at.Dot(Forward);
            if (depth <= 0.0 || at.Dot(X) <= depth * Half)
            {
                return false;
            }

            double x = at.Dot(X) / depth,
                y = at.Dot(Y) / depth;
            return y > Math.Max(-Side, Math.Min(P.Y, Q.Y))
                && y < Math.Min(Side, Math.Max(P.Y, Q.Y))
                && x < P.X + ((Q.X - P.X) * (y - P.Y) / (Q.Y - P.Y));
        }
    }

    /// <summary>Sides that hang together.</summary>
    private sealed class Fence
    {
        private readonly (Vector3D From, Vector3D To)[] arcs;
        private readonly Vector3D middle;
        private readonly double cosReach;

        public Fence((Vector3D From, Vector3D To)[] arcs)
        {
            this.arcs = arcs;
            middle = Unit(
                arcs.Aggregate(new Vector3D(1e-9, 0.0, 0.0), (sum, arc) => sum + arc.From)
            );
            cosReach = arcs.Min(arc => Math.Min(middle.Dot(arc.From), middle.Dot(arc.To)));
        }

        /// <summary>True when a way between two places crosses an odd number of times.</summary>
        public bool Parts(Vector3D p, Vector3D q)
        {
            // Within less than a hemisphere, and both places outside of that: it cannot part them.
            if (cosReach > 0.01 && p.Dot(middle) < cosReach && q.Dot(middle) < cosReach)
            {
                return false;
            }

            if ((p + q).Length > 1e-3)
            {
                return Odd(p, q);
            }

            // By way of a third place, for the far one lies straight opposite.
            var aside = Unit(p.Cross(new(0.36, -0.48, 0.8)) + (q * 0.1));
            return Odd(p, aside) != Odd(aside, q);
        }

        private bool Odd(Vector3D p, Vector3D q)
        {
            var plane = p.Cross(q);
            var (after, before) = (plane.Cross(p), q.Cross(plane));
            var odd = false;
            foreach (var (from, to) in arcs)
            {
                double a = plane.Dot(from),
                    b = plane.Dot(to);
                if (a >= 0.0 == b >= 0.0)
                {
                    continue;
                }

                // Where the arc meets the plane of the way, and whether that lies on the way.
                var meet = (from * Math.Abs(b)) + (to * Math.Abs(a));
                odd ^= after.Dot(meet) > 0.0 && before.Dot(meet) > 0.0;
            }

            return odd;
        }
    }
}
