namespace Framing.Drawing;

/// <summary>Where things stand in a picture of a size: heading above, chart, legend beside or below it.</summary>
/// <remarks>
/// Everything grows with the picture: a picture of twice the size is the same picture, twice as fine. Below 1600 x 1000 text
/// shrinks with the root of the size only, and the legend goes first, so that what is left can be read.
/// </remarks>
internal sealed class PictureLayout
{
    private const double LeastText = 8.5;

    public PictureLayout(PictureSize size, bool hasTitle, bool hasSummary, bool hasLegend)
    {
        Size = size;
        var scale = Math.Min(size.Width / 1600.0, size.Height / 1000.0);
        Unit = scale >= 1.0 ? scale : Math.Sqrt(scale);
        Margin = (scale >= 0.4 ? 34.0 : 16.0) * Unit;
        LegendStandsBeside = hasLegend && size.Width >= 640 && size.Width >= 0.9 * size.Height;
        LegendStandsBelow =
            hasLegend && !LegendStandsBeside && size.Height >= 640 && size.Width >= 480;

        var top = Margin;
        if (hasTitle)
        {
            TitleBase = top + (Typefaces.CapHeight * TitleSize);
            top = TitleBase + (6.0 * Unit);
        }

        if (hasSummary)
        {
            SummaryBase = top + (8.0 * Unit) + (Typefaces.CapHeight * SummarySize);
            top = SummaryBase + (6.0 * Unit);
        }

        HeadingBottom = top;
        var edge = EdgeTextSize * 4.3;
        var left = Margin + edge;
        var right = size.Width - Margin - edge;
        var bottom = size.Height - Margin - (EdgeTextSize * 1.6);
        top += EdgeTextSize * (hasTitle || hasSummary ? 2.4 : 1.6);
        if (LegendStandsBeside)
        {
            right = size.Width - Margin - LegendWidth - edge - (4.0 * Unit);
        }
        else if (LegendStandsBelow)
        {
            bottom -= LegendHeightBelow;
        }

        Chart = new(Math.Ceiling(left), Math.Ceiling(top), Math.Floor(right), Math.Floor(bottom));
        if (LegendStandsBeside)
        {
            Legend = new(
                size.Width - Margin - LegendWidth,
                Chart.Top,
                size.Width - Margin,
                Chart.Bottom
            );
        }
        else if (LegendStandsBelow)
        {
            Legend = new(
                Chart.Left,
                Chart.Bottom + (EdgeTextSize * 2.6),
                Chart.Right,
                size.Height - Margin
            );
        }
    }

    public PictureSize Size { get; }

    /// <summary>Pixels that one unit of the 1600 x 1000 picture takes.</summary>
    public double Unit { get; }

    public double Margin { get; }

    public bool LegendStandsBeside { get; }

    public bool LegendStandsBelow { get; }

    public double TitleBase { get; }

    public double SummaryBase { get; }

    public double HeadingBottom { get; }

    public Box Chart { get; }

    public Box? Legend { get; }

    public Box Page => new(0.0, 0.0, Size.Width, Size.Height);

    public double TitleSize => Text(27.0);

    public double SummarySize => Text(15.5);

    public double EdgeTextSize => Text(12.5);

    public double LegendTextSize => Text(14.0);

    public double LegendRow => LegendTextSize * 2.0;

    public double LegendWidth => LegendTextSize * 15.0;

    private double LegendHeightBelow => LegendRow * 7.0;

    /// <summary>A text size that is asked for at 1600 x 1000, never too small to read.</summary>
    public double Text(double size) => Math.Max(LeastText, size * Unit);
}
