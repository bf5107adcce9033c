namespace Framing.Drawing;

/// <summary>Straight lines from place to place: several open or closed runs.</summary>
internal sealed class Lines
{
    private readonly List<(PicturePoint[] Points, bool Closed)> runs = [];

    public IReadOnlyList<(PicturePoint[] Points, bool Closed)> Runs => runs;

    public bool IsEmpty => runs.Count == 0;

    public static Lines Closed(IEnumerable<PicturePoint> points)
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

    public void Add(IEnumerable<PicturePoint> points, bool closed)
    {
        PicturePoint[] run = [.. points];
        if (run.Length > 1)
        {
            runs.Add((run, closed));
        }
    }
}
