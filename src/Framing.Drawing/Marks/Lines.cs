namespace Framing.Drawing;

/// <summary>Straight lines from place to place: several open or closed runs.</summary>
internal sealed class Lines
{
    private readonly List<Run> runs = [];

    public IReadOnlyList<Run> Runs => runs;

    public bool IsEmpty => runs.Count == 0;

    public static Lines Closed(PicturePoint[] points)
    {
        var lines = new Lines();
        lines.Add(points, closed: true);
        return lines;
    }

    public static Lines Open(params PicturePoint[] points)
    {
        var lines = new Lines();
        lines.Add(points, closed: false);
        return lines;
    }

    public static Lines Rectangle(Box box) =>
        Closed([
            new(box.Left, box.Top),
            new(box.Right, box.Top),
            new(box.Right, box.Bottom),
            new(box.Left, box.Bottom),
        ]);

    /// <summary>Adds a run; fewer than two places make none.</summary>
    public void Add(PicturePoint[] points, bool closed)
    {
        if (points.Length > 1)
        {
            runs.Add(new(points, closed));
        }
    }

    /// <summary>Does something for every straight piece, the one that closes a run included.</summary>
    public void ForEachPiece(Action<PicturePoint, PicturePoint> use)
    {
        foreach (var run in runs)
        {
            var points = run.Points;
            for (var i = 1; i < points.Length; i++)
            {
                use(points[i - 1], points[i]);
            }

            if (run.Closed)
            {
                use(points[^1], points[0]);
            }
        }
    }

    /// <summary>True when a straight piece runs through a box.</summary>
    public bool Cross(Box box)
    {
        foreach (var run in runs)
        {
            var points = run.Points;
            for (var i = run.Closed ? 0 : 1; i < points.Length; i++)
            {
                if (box.IsCrossedBy(points[i == 0 ? points.Length - 1 : i - 1], points[i]))
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>True when a place lies inside a closed run (odd number of crossings on the way out).</summary>
    public bool Hold(PicturePoint place)
    {
        var inside = false;
        foreach (var run in runs)
        {
            var points = run.Points;
            for (int i = 0, j = points.Length - 1; run.Closed && i < points.Length; j = i++)
            {
                var (a, b) = (points[i], points[j]);
                if (
                    a.Y > place.Y != b.Y > place.Y
                    && place.X < a.X + ((place.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X))
                )
                {
                    inside = !inside;
                }
            }
        }

        return inside;
    }

    /// <summary>The smallest box around all places.</summary>
    public Box Bounds()
    {
        var bounds = new Box(double.MaxValue, double.MaxValue, double.MinValue, double.MinValue);
        foreach (var run in runs)
        {
            foreach (var point in run.Points)
            {
                bounds = new(
                    Math.Min(bounds.Left, point.X),
                    Math.Min(bounds.Top, point.Y),
                    Math.Max(bounds.Right, point.X),
                    Math.Max(bounds.Bottom, point.Y)
                );
            }
        }

        return bounds;
    }
}
