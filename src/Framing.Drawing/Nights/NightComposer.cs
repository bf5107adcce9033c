using System.Globalization;
using Framing.Nights;

namespace Framing.Drawing;

/// <summary>Turns planned nights into a sheet of marks: heading, a band each night, legend.</summary>
internal sealed class NightComposer
{
    private const double LeastText = 8.5;

    private readonly List<PlacedLabel> labels = [];
    private readonly string title;

    public NightComposer(PlannedNights plan, string title, PictureSize size, PicturePalette palette)
    {
        (Plan, this.title) = (plan, title);
        Shown = Math.Min(plan.Nights.Count, NightPicture.MostNights);
        Palette = Palette.Of(palette);
        Inks = NightInks.Of(palette);
        var scale = size.Width / 1600.0;
        Unit = scale >= 1.0 ? scale : Math.Sqrt(scale);
        BandHeight = Shown == 1 ? 470.0 * Unit : 330.0 * Unit;
        var height = (int)
            Math.Ceiling(HeadingHeight + (Shown * BandHeight) + LegendHeight + Margin);
        Sheet = new(new(size.Width, Math.Clamp(height, 200, 8000)), Palette.Page);
    }

    public PlannedNights Plan { get; }

    public Palette Palette { get; }

    public NightInks Inks { get; }

    public Sheet Sheet { get; }

    /// <summary>Pixels that one unit of a picture 1600 wide takes.</summary>
    public double Unit { get; }

    public double TextSize => Text(13.0);

    public IReadOnlyList<PlacedLabel> Labels => labels;

    private int Shown { get; }

    private double Margin => 30.0 * Unit;

    private double BandHeight { get; }

    private double HeadingHeight => Margin + Text(27.0) + (22.0 * Unit);

    private double LegendHeight => TextSize * 2.4 * LegendRows;

    private int LegendRows => Sheet is null || Sheet.Size.Width >= 1200 ? 2 : 3;

    public void Compose()
    {
        var size = Text(27.0);
        Write(
            TextFit.Cut(title, TextWeight.SemiBold, size, Sheet.Size.Width - (2.0 * Margin)),
            new(Margin, Margin + (Typefaces.CapHeight * size)),
            size,
            TextWeight.SemiBold,
            Palette.PageInk,
            LabelKind.Heading
        );
        if (Shown < Plan.Nights.Count)
        {
            Right(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"the first {Shown} of {Plan.Nights.Count} nights"
                ),
                Margin + (Typefaces.CapHeight * size)
            );
        }

        for (var i = 0; i < Shown; i++)
        {
            var top = HeadingHeight + (i * BandHeight);
            var room = new Box(Margin, top, Sheet.Size.Width - Margin, top + BandHeight);
            var night = Plan.Nights[i];
            Sheet.Group("night", null, () => new NightBand(this, night, room).Draw());
        }

        var bottom = HeadingHeight + (Shown * BandHeight);
        Sheet.Group(
            "legend",
            null,
            () =>
                NightLegend.Draw(
                    this,
                    new(Margin, bottom, Sheet.Size.Width - Margin, bottom + LegendHeight)
                )
        );
    }

    /// <summary>A text size that is asked for in a picture 1600 wide, never too small to read.</summary>
    public double Text(double size) => Math.Max(LeastText, size * Unit);

    /// <summary>Writes a text where it meets no other.</summary>
    /// <returns>False when it would, and nothing was written.</returns>
    public bool Write(
        string text,
        PicturePoint start,
        double size,
        TextWeight weight,
        Colour ink,
        LabelKind kind = LabelKind.Coordinate,
        Stroke? border = null
    )
    {
        var room = SkyComposer.RoomOf(text, start, size, weight);
        var placed = labels.Exists(other =>
            new Box(other.Left, other.Top, other.Right, other.Bottom).Meets(room)
        );
        if (placed || room.Left < 0.0 || room.Right > Sheet.Size.Width)
        {
            return false;
        }

        labels.Add(new(text, kind, room.Left, room.Top, room.Right, room.Bottom));
        Sheet.Write(text, start, size, weight, ink, border);
        return true;
    }

    /// <summary>A text whose middle stands at a place of its base line.</summary>
    public bool Centred(
        string text,
        PicturePoint middle,
        double size,
        TextWeight weight,
        Colour ink,
        LabelKind kind = LabelKind.Coordinate,
        Stroke? border = null
    ) =>
        Write(
            text,
            new(middle.X - (Typefaces.Measure(text, weight, size) / 2.0), middle.Y),
            size,
            weight,
            ink,
            kind,
            border
        );

    private void Right(string text, double baseLine) =>
        Write(
            text,
            new(
                Sheet.Size.Width - Margin - Typefaces.Measure(text, Palette.Plain, TextSize),
                baseLine
            ),
            TextSize,
            Palette.Plain,
            Palette.PageSoft,
            LabelKind.Heading
        );
}
