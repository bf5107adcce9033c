using Framing.Sky;

namespace Framing.Planning;

/// <summary>How much of one frame another shows.</summary>
internal static class SharedSky
{
    /// <summary>Part of the first figure that the second covers, 0 to 1.</summary>
    /// <param name="panel">Corners of a convex figure smaller than a hemisphere, in order.</param>
    /// <param name="frame">Corners of another.</param>
    public static double Fraction(
        IReadOnlyList<SkyDirection> panel,
        IReadOnlyList<SkyDirection> frame
    )
    {
        var whole = new SkyPolygon(panel);
        var plane = new TangentPlane(whole.Middle);
        var figure = new List<PlanePoint>(panel.Count);
        foreach (var corner in panel)
        {
            figure.Add(plane.Project(corner));
        }

        var cutter = new List<PlanePoint>(frame.Count);
        foreach (var corner in frame)
        {
            if (!plane.TryProject(corner, out var point))
            {
                // A frame is far smaller than a hemisphere: one corner behind the panel's plane, and it is elsewhere.
                return 0.0;
            }

            cutter.Add(point);
        }

        if (Turn(cutter) < 0.0)
        {
            cutter.Reverse();
        }

        // Sutherland and Hodgman 1974, CACM 17, 32: cut by one edge after the other.
        for (var i = 0; i < cutter.Count && figure.Count > 0; i++)
        {
            figure = Cut(figure, cutter[i], cutter[(i + 1) % cutter.Count]);
        }

        return figure.Count < 3
            ? 0.0
            : Math.Clamp(
                new SkyPolygon([.. figure.Select(plane.Unproject)]).Area.Steradians
                    / whole.Area.Steradians,
                0.0,
                1.0
            );
    }

    private static double Turn(List<PlanePoint> figure)
    {
        var sum = 0.0;
        for (var i = 0; i < figure.Count; i++)
        {
            var next = figure[(i + 1) % figure.Count];
            sum += (figure[i].Xi * next.Eta) - (next.Xi * figure[i].Eta);
        }

        return sum;
    }

    private static List<PlanePoint> Cut(List<PlanePoint> figure, PlanePoint from, PlanePoint to)
    {
        var kept = new List<PlanePoint>(figure.Count + 1);
        for (var i = 0; i < figure.Count; i++)
        {
            var here = figure[i];
            var next = figure[(i + 1) % figure.Count];
            var sideHere = Side(from, to, here);
            var sideNext = Side(from, to, next);
            if (sideHere >= 0.0)
            {
                kept.Add(here);
            }

            if ((sideHere > 0.0 && sideNext < 0.0) || (sideHere < 0.0 && sideNext > 0.0))
            {
                kept.Add(here + ((next - here) * (sideHere / (sideHere - sideNext))));
            }
        }

        return kept;
    }

    private static double Side(PlanePoint from, PlanePoint to, PlanePoint point) =>
        ((to.Xi - from.Xi) * (point.Eta - from.Eta)) - ((to.Eta - from.Eta) * (point.Xi - from.Xi));
}
