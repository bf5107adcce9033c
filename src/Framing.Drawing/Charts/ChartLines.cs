using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Drawing;

/// <summary>Lines on the sky as lines in the picture.</summary>
internal static class ChartLines
{
    /// <summary>The sides of an outline. A great circle is straight in this chart, so that corners suffice.</summary>
    public static Lines Of(ChartGeometry chart, SkyOutline outline)
    {
        var lines = new Lines();
        for (var i = 0; i < outline.Areas.Count; i++)
        {
            Add(lines, chart, outline.Areas[i].Corners, closed: true);
        }

        return lines;
    }

    /// <summary>A closed ring of corners.</summary>
    public static Lines Of(ChartGeometry chart, IReadOnlyList<SkyDirection> corners)
    {
        var lines = new Lines();
        Add(lines, chart, corners, closed: true);
        return lines;
    }

    /// <summary>Adds a run of directions; where it leaves what the chart can show by far, it is cut into open runs.</summary>
    public static void Add(
        Lines lines,
        ChartGeometry chart,
        IReadOnlyList<SkyDirection> directions,
        bool closed
    )
    {
        // Nothing 20 pictures away is needed, and the numbers stay small.
        var far = 20.0 * Math.Max(chart.Picture.Width, chart.Picture.Height);
        var run = new List<PicturePoint>();
        var whole = true;
        for (var i = 0; i < directions.Count; i++)
        {
            if (
                chart.TrySkyToPicture(directions[i], out var point)
                && Math.Abs(point.X) < far
                && Math.Abs(point.Y) < far
            )
            {
                run.Add(point);
                continue;
            }

            whole = false;
            lines.Add([.. run], closed: false);
            run.Clear();
        }

        lines.Add([.. run], closed && whole);
    }
}
