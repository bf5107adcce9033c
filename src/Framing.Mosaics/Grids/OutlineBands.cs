using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>An outline in the plane of a mosaic: what of it lies within a strip.</summary>
internal sealed class OutlineBands
{
    private readonly (double X, double Y)[][] areas;

    /// <summary>Lays an outline into a plane.</summary>
    /// <param name="outline">The outline; every corner has to lie in front of the plane.</param>
    /// <param name="pose">The plane's tangent point, and the position angle of up there.</param>
    /// <param name="along">True for strips along the width of the picture, false for strips along its height.</param>
    public OutlineBands(SkyOutline outline, CameraPose pose, bool along)
    {
        var plane = new TangentPlane(pose.Centre);
        var (sin, cos) = Math.SinCos(pose.PositionAngle.Radians);
        areas =
        [
            .. outline.Areas.Select(area =>
                area.Corners.Select(corner =>
                    {
                        var point = plane.Project(corner);
                        var right = (point.Eta * sin) - (point.Xi * cos);
                        var up = (point.Xi * sin) + (point.Eta * cos);
                        return along ? (right, up) : (up, right);
                    })
                    .ToArray()
            ),
        ];
        var all = areas.SelectMany(area => area).ToList();
        (Lowest, Highest) = (all.Min(point => point.Y), all.Max(point => point.Y));
    }

    /// <summary>Where the outline begins across the strips.</summary>
    public double Lowest { get; }

    /// <summary>Where it ends.</summary>
    public double Highest { get; }

    /// <summary>The stretches along a strip that the outline takes up in it, widened on both sides and joined where they touch.</summary>
    /// <param name="low">The strip's lower edge.</param>
    /// <param name="high">Its upper edge.</param>
    /// <param name="margin">By how much each stretch is widened.</param>
    public List<(double Start, double End)> Within(double low, double high, double margin)
    {
        // What a figure takes up along a strip is what its border takes up: its own sides cut at the edges of the strip, and
        // the stretches of those edges that lie inside it.
        List<(double Start, double End)> stretches = [];
        List<double> crossings = [];
        foreach (var area in areas)
        {
            for (var i = 0; i < area.Length; i++)
            {
                var (from, to) = (area[i], area[(i + 1) % area.Length]);
                if (from.Y > to.Y)
                {
                    (from, to) = (to, from);
                }

                if (to.Y < low || from.Y > high)
                {
                    continue;
                }

                var start = from.Y >= low ? from.X : XAt(from, to, low);
                var end = to.Y <= high ? to.X : XAt(from, to, high);
                stretches.Add((Math.Min(start, end) - margin, Math.Max(start, end) + margin));
            }

            Inside(area, low);
            Inside(area, high);
        }

        return Joined(stretches);

        void Inside((double X, double Y)[] area, double y)
        {
            crossings.Clear();
            for (var i = 0; i < area.Length; i++)
            {
                var (from, to) = (area[i], area[(i + 1) % area.Length]);
                if (from.Y > y != to.Y > y)
                {
                    crossings.Add(XAt(from, to, y));
                }
            }

            crossings.Sort();
            for (var i = 0; i + 1 < crossings.Count; i += 2)
            {
                stretches.Add((crossings[i] - margin, crossings[i + 1] + margin));
            }
        }
    }

    private static double XAt((double X, double Y) from, (double X, double Y) to, double y) =>
        from.X + ((to.X - from.X) * ((y - from.Y) / (to.Y - from.Y)));

    private static List<(double Start, double End)> Joined(List<(double Start, double End)> all)
    {
        all.Sort();
        List<(double Start, double End)> joined = [];
        foreach (var next in all)
        {
            if (joined.Count > 0 && next.Start <= joined[^1].End)
            {
                joined[^1] = (joined[^1].Start, Math.Max(joined[^1].End, next.End));
            }
            else
            {
                joined.Add(next);
            }
        }

        return joined;
    }
}
