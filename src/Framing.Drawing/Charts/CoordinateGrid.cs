using Framing.Sky;

namespace Framing.Drawing;

/// <summary>Lines of right ascension and declination at round values, about equally dense at every field and at the poles.</summary>
internal static class CoordinateGrid
{
    private const int BorderSamples = 48;
    private const int Day = 86400;
    private const int Quarter = 21600;
    private const double ArcsecondsPerRadian = 180.0 * 3600.0 / Math.PI;

    /// <summary>The grid of a chart.</summary>
    /// <param name="chart">The chart.</param>
    /// <param name="spacing">How far apart lines are at least, in pixels, at the middle of the chart.</param>
    public static IReadOnlyList<GridLine> Of(ChartGeometry chart, double spacing)
    {
        var extent = Extent(chart);
        var perPixel = chart.Scale.Arcseconds;
        var arc = GridStep.OfArc(spacing * perPixel);

        // Meridians close in on a pole; with the pole in the chart they are spaced for half the way to the nearer edge.
        var radius = chart.Scale.Radians * Math.Min(chart.Width, chart.Height) / 4.0;
        var cosine = Math.Max(
            Math.Cos(chart.View.Centre.Declination.Radians),
            Math.Sin(Math.Atan(radius))
        );
        var time = GridStep.OfTime(spacing * perPixel / 15.0 / cosine);
        var lines = new List<GridLine>();
        var parallels = (
            First: (int)Math.Ceiling(extent.South / arc.Units),
            Last: (int)Math.Floor(extent.North / arc.Units)
        );
        for (var i = parallels.First; i <= parallels.Last; i++)
        {
            if (Math.Abs(i * arc.Units) < 90 * 3600)
            {
                lines.Add(Parallel(chart, extent, arc, i * arc.Units));
            }
        }

        var first = (int)Math.Ceiling(extent.West / time.Units);
        var last = extent.AllAround
            ? first + (Day / time.Units) - 1
            : (int)Math.Floor(extent.East / time.Units);
        for (var i = first; i <= last; i++)
        {
            lines.Add(Meridian(chart, extent, arc, time, i * time.Units));
        }

        return lines;
    }

    private static GridLine Parallel(
        ChartGeometry chart,
        GridExtent extent,
        GridStep step,
        int declination
    )
    {
        var samples = extent.AllAround ? 360 : 96;
        var directions = new SkyDirection[samples + 1];
        for (var i = 0; i <= samples; i++)
        {
            var time = extent.West + ((extent.East - extent.West) * i / samples);
            directions[i] = SkyDirection.FromRaDec(
                Angle.FromHours(time / 3600.0),
                Angle.FromArcseconds(declination)
            );
        }

        return Line(chart, false, step.WriteArc(declination), directions);
    }

    private static GridLine Meridian(
        ChartGeometry chart,
        GridExtent extent,
        GridStep arc,
        GridStep time,
        int rightAscension
    )
    {
        // Only every sixth hour runs into a pole; the others end at the last parallel before it.
        var limit =
            rightAscension % Quarter == 0
                ? 90.0 * 3600.0
                : ((90 * 3600 / arc.Units) - (90 * 3600 % arc.Units == 0 ? 1 : 0)) * arc.Units;
        var south = Math.Max(extent.South, -limit);
        var north = Math.Min(extent.North, limit);
        const int samples = 48;
        var hours = Angle.FromHours(rightAscension / 3600.0);
        var directions = new SkyDirection[samples + 1];
        for (var i = 0; i <= samples; i++)
        {
            directions[i] = SkyDirection.FromRaDec(
                hours,
                Angle.FromArcseconds(south + ((north - south) * i / samples))
            );
        }

        return Line(chart, true, time.WriteTime(rightAscension), directions);
    }

    private static GridLine Line(
        ChartGeometry chart,
        bool meridian,
        string label,
        SkyDirection[] directions
    )
    {
        var lines = new Lines();
        ChartLines.Add(lines, chart, directions, closed: false);
        var crossings = new List<EdgeCrossing>();
        foreach (var run in lines.Runs)
        {
            var points = run.Points;
            for (var i = 1; i < points.Length; i++)
            {
                if (
                    chart.Holds(points[i]) != chart.Holds(points[i - 1])
                    && Crossing(chart.Frame, points[i - 1], points[i]) is { } crossing
                )
                {
                    crossings.Add(crossing);
                }
            }
        }

        return new(meridian, label, lines, crossings);
    }

    private static EdgeCrossing? Crossing(Box frame, PicturePoint from, PicturePoint to)
    {
        var (inside, outside) = frame.Holds(from) ? (from, to) : (to, from);
        var step = outside - inside;
        var (edge, part) = (FrameEdge.Left, double.MaxValue);
        void Consider(FrameEdge candidate, double distance, double along)
        {
            if (along > 0.0 && distance / along < part)
            {
                (edge, part) = (candidate, distance / along);
            }
        }

        Consider(FrameEdge.Left, inside.X - frame.Left, -step.X);
        Consider(FrameEdge.Right, frame.Right - inside.X, step.X);
        Consider(FrameEdge.Top, inside.Y - frame.Top, -step.Y);
        Consider(FrameEdge.Bottom, frame.Bottom - inside.Y, step.Y);
        return part <= 1.0 ? new(edge, inside + (step * part)) : null;
    }

    /// <summary>The range of coordinates in the chart: the border holds the extremes, unless a pole lies inside.</summary>
    private static GridExtent Extent(ChartGeometry chart)
    {
        var middle = chart.View.Centre.RightAscension;
        var (west, east) = (double.MaxValue, double.MinValue);
        var (south, north) = (double.MaxValue, double.MinValue);
        foreach (var direction in Border(chart))
        {
            var time = (direction.RightAscension - middle).WrappedSigned.Hours * 3600.0;
            var arc = direction.Declination.Radians * ArcsecondsPerRadian;
            (west, east) = (Math.Min(west, time), Math.Max(east, time));
            (south, north) = (Math.Min(south, arc), Math.Max(north, arc));
        }

        var start = middle.Hours * 3600.0;
        var northPole = Holds(chart, SkyDirection.NorthPole);
        var southPole = Holds(chart, SkyDirection.SouthPole);

        // A little more than the border, so that lines are cut by the frame and do not end on it.
        var rimArc = (north - south) * 0.02;
        var rimTime = (east - west) * 0.02;
        const double pole = 90.0 * 3600.0;
        return northPole || southPole
            ? new(
                0.0,
                Day,
                southPole ? -pole : Math.Max(-pole, south - rimArc),
                northPole ? pole : Math.Min(pole, north + rimArc),
                true
            )
            : new(
                start + west - rimTime,
                start + east + rimTime,
                Math.Max(-pole, south - rimArc),
                Math.Min(pole, north + rimArc),
                false
            );
    }

    private static SkyDirection[] Border(ChartGeometry chart)
    {
        var frame = chart.Frame;
        var border = new SkyDirection[4 * (BorderSamples + 1)];
        for (var i = 0; i <= BorderSamples; i++)
        {
            var x = frame.Left + (frame.Width * i / BorderSamples);
            var y = frame.Top + (frame.Height * i / BorderSamples);
            border[4 * i] = chart.PictureToSky(new(x, frame.Top));
            border[(4 * i) + 1] = chart.PictureToSky(new(x, frame.Bottom));
            border[(4 * i) + 2] = chart.PictureToSky(new(frame.Left, y));
            border[(4 * i) + 3] = chart.PictureToSky(new(frame.Right, y));
        }

        return border;
    }

    private static bool Holds(ChartGeometry chart, SkyDirection direction) =>
        chart.TrySkyToPicture(direction, out var point) && chart.Holds(point);

    /// <summary>West and east in seconds of time, south and north in seconds of arc.</summary>
    private readonly record struct GridExtent(
        double West,
        double East,
        double South,
        double North,
        bool AllAround
    );
}
