namespace Framing.Imaging;

/// <summary>Straight lines of light, told by many elongated peaks that lie along the direction they all point to.</summary>
internal static class TrailLines
{
    private const int LeastPeaks = 8;
    private const double MostTurn = 0.25;

    /// <summary>Says which peaks belong to a line.</summary>
    /// <param name="shapes">The peaks.</param>
    /// <param name="typicalElongation">How long stars are for their width in this frame.</param>
    /// <param name="typicalWidth">How wide stars are.</param>
    /// <param name="lines">How many lines there are.</param>
    /// <returns>True for each peak on a line.</returns>
    public static bool[] Find(
        IReadOnlyList<StarShape> shapes,
        double typicalElongation,
        double typicalWidth,
        out int lines
    )
    {
        var onLine = new bool[shapes.Count];
        var stretched = new List<int>();
        for (var i = 0; i < shapes.Count && stretched.Count < 1500; i++)
        {
            if (shapes[i].Elongation > 1.35 * typicalElongation)
            {
                stretched.Add(i);
            }
        }

        lines = 0;
        foreach (var i in stretched)
        {
            if (onLine[i])
            {
                continue;
            }

            var members = stretched.FindAll(j => PointsAlong(shapes[i], shapes[j], typicalWidth));
            if (members.Count < LeastPeaks)
            {
                continue;
            }

            lines++;
            Mark(shapes, onLine, members, typicalWidth);
        }

        return onLine;
    }

    private static bool PointsAlong(in StarShape one, in StarShape other, double width)
    {
        var turn = Math.Abs(one.Direction - other.Direction);
        if (Math.Min(turn, Math.PI - turn) > MostTurn)
        {
            return false;
        }

        var (dx, dy) = (other.X - one.X, other.Y - one.Y);
        var distance = double.Hypot(dx, dy);
        var (sin, cos) = Math.SinCos((one.Direction + other.Direction) / 2.0);

        // Measured directions are good to some degrees: near peaks tell the line best.
        var across = Math.Abs((dy * cos) - (dx * sin));
        return across < (0.6 * width) + (0.12 * distance) && distance < 60.0 * width;
    }

    /// <summary>Lays a line through the members and takes everything faint that lies on it.</summary>
    private static void Mark(
        IReadOnlyList<StarShape> shapes,
        bool[] onLine,
        List<int> members,
        double width
    )
    {
        var (x, y) = (members.Average(i => shapes[i].X), members.Average(i => shapes[i].Y));
        double xx = 0.0,
            yy = 0.0,
            xy = 0.0;
        foreach (var i in members)
        {
            var (dx, dy) = (shapes[i].X - x, shapes[i].Y - y);
            xx += dx * dx;
            yy += dy * dy;
            xy += dx * dy;
        }

        var (sin, cos) = Math.SinCos(0.5 * Math.Atan2(2.0 * xy, xx - yy));
        var lights = members.ConvertAll(i => shapes[i].Light);
        lights.Sort();
        var usual = lights[lights.Count / 2];
        for (var i = 0; i < shapes.Count; i++)
        {
            var across = Math.Abs(((shapes[i].Y - y) * cos) - ((shapes[i].X - x) * sin));
            onLine[i] |= across < 1.2 * width && shapes[i].Light < 4.0 * usual;
        }

        foreach (var i in members)
        {
            onLine[i] = true;
        }
    }
}
