using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>A stack of bands over an outline: rows, or columns.</summary>
internal sealed class BandStack
{
    /// <summary>Sky between two panels of a band that do not belong together is at least this part of a step wide, so that no hole closes by a small error.</summary>
    private const double LeastBreak = 0.25;

    private readonly OutlineBands bands;
    private readonly double margin;
    private readonly bool rows;
    private readonly double panel;
    private readonly double step;
    private readonly double depth;
    private readonly double stride;
    private readonly double spare;

    public BandStack(
        OutlineBands bands,
        FieldShape field,
        PanelOverlap overlap,
        double margin,
        bool rows
    )
    {
        this.bands = bands;
        this.margin = margin;
        this.rows = rows;
        var (width, height) = (field.TangentWidth, field.TangentHeight);
        (panel, depth) = rows ? (width, height) : (height, width);
        step = panel - (rows ? overlap.AlongWidth : overlap.AlongHeight);
        stride = depth - (rows ? overlap.AlongHeight : overlap.AlongWidth);
        var extent = bands.Highest - bands.Lowest;
        Count = GridSteps.PanelsNeeded(extent, depth, depth - stride, margin);
        spare = depth + ((Count - 1) * stride) - extent - (2.0 * margin);
    }

    /// <summary>The number of bands.</summary>
    public int Count { get; }

    /// <summary>The panels when a part of what is spare lies below the outline and the rest above it.</summary>
    /// <param name="below">That part, 0 to 1.</param>
    /// <param name="broken">True to leave out panels in the middle of a band, where the outline is elsewhere.</param>
    /// <returns>The layout; null when it would leave a hole in its midst.</returns>
    public BandLayout? At(double below, bool broken)
    {
        var first = bands.Lowest - margin - (spare * below);
        List<(double Along, double Across)> places = [];
        var left = margin + (spare * Math.Min(below, 1.0 - below));
        var runs = new List<(double Start, double End)>[Count];
        for (var band = 0; band < Count; band++)
        {
            // Counted from the middle as a full grid is, so that the bands are a step apart to the last digit.
            var low = first + (band * stride);
            runs[band] = Runs(
                bands.Within(low - margin, low + depth + margin, margin),
                broken,
                ref left
            );
            foreach (var (start, end) in runs[band])
            {
                var count = (int)Math.Round((end - start - panel) / step) + 1;
                for (var i = 0; i < count; i++)
                {
                    places.Add((start + (panel / 2.0) + (i * step), low + (depth / 2.0)));
                }
            }
        }

        return broken && HasHole(runs) ? null : new(rows, places, left);
    }

    /// <summary>From what is needed in a band to the runs of panels that cover it, each about the middle of its part.</summary>
    private List<(double Start, double End)> Runs(
        List<(double Start, double End)> needed,
        bool broken,
        ref double left
    )
    {
        List<(double Start, double End)> parts = [];
        foreach (var stretch in needed)
        {
            parts.Add(stretch);
            while (
                parts.Count > 1
                && (!broken || Run(parts[^1]).Start - Run(parts[^2]).End < LeastBreak * step)
            )
            {
                parts[^2] = (parts[^2].Start, parts[^1].End);
                parts.RemoveAt(parts.Count - 1);
            }
        }

        foreach (var part in parts)
        {
            left = Math.Min(left, margin + part.Start - Run(part).Start);
        }

        return parts.ConvertAll(Run);
    }

    private (double Start, double End) Run((double Start, double End) part)
    {
        var length =
            panel
            + (
                (GridSteps.PanelsNeeded(part.End - part.Start, panel, panel - step, 0.0) - 1) * step
            );
        var middle = (part.Start + part.End) / 2.0;
        return (middle - (length / 2.0), middle + (length / 2.0));
    }

    /// <summary>True when sky between the runs of a band cannot be reached from outside.</summary>
    private static bool HasHoleIn(List<(double Start, double End)>[] open, bool[][] reached)
    {
        // From the sky around, through openings of neighbouring bands that meet.
        for (var again = true; again; )
        {
            again = false;
            for (var band = 0; band < open.Length; band++)
            {
                for (var i = 0; i < open[band].Count; i++)
                {
                    if (
                        reached[band][i]
                        || !(Meets(band - 1, open[band][i]) || Meets(band + 1, open[band][i]))
                    )
                    {
                        continue;
                    }

                    reached[band][i] = again = true;
                }
            }
        }

        return reached.Any(band => band.Contains(false));

        bool Meets(int band, (double Start, double End) opening)
        {
            if (band < 0 || band >= open.Length)
            {
                return true;
            }

            for (var i = 0; i < open[band].Count; i++)
            {
                if (
                    reached[band][i]
                    && Math.Min(open[band][i].End, opening.End)
                        > Math.Max(open[band][i].Start, opening.Start)
                )
                {
                    return true;
                }
            }

            return false;
        }
    }

    private bool HasHole(List<(double Start, double End)>[] runs)
    {
        // Openings are narrowed, so that one that is barely there counts as none.
        var hair = LeastBreak * step / 2.0;
        var open = new List<(double Start, double End)>[runs.Length];
        for (var band = 0; band < runs.Length; band++)
        {
            open[band] = [];
            var from = double.NegativeInfinity;
            foreach (var (start, end) in runs[band])
            {
                open[band].Add((from, start - hair));
                from = end + hair;
            }

            open[band].Add((from, double.PositiveInfinity));
        }

        bool[][] reached =
        [
            .. open.Select(band =>
                band.Select(opening =>
                        double.IsInfinity(opening.Start) || double.IsInfinity(opening.End)
                    )
                    .ToArray()
            ),
        ];
        return HasHoleIn(open, reached);
    }
}
