namespace Framing.Drawing;

/// <summary>Title and summary above the chart.</summary>
internal static class HeadingLayer
{
    public static void Draw(SkyComposer composer)
    {
        var layout = composer.Layout;
        var left = layout.Legend is null ? layout.Margin : layout.Chart.Left;
        var room = layout.Size.Width - layout.Margin - left;
        composer.Sheet.Group(
            "heading",
            null,
            () =>
            {
                Write(
                    composer,
                    composer.Scene.Title,
                    new(left, layout.TitleBase),
                    layout.TitleSize,
                    TextWeight.SemiBold,
                    composer.Palette.PageInk,
                    room
                );
                Write(
                    composer,
                    composer.Scene.Summary,
                    new(left, layout.SummaryBase),
                    layout.SummarySize,
                    composer.Palette.Plain,
                    composer.Palette.PageSoft,
                    room
                );
            }
        );
    }

    private static void Write(
        SkyComposer composer,
        string text,
        PicturePoint start,
        double size,
        TextWeight weight,
        Colour ink,
        double room
    )
    {
        if (text.Length == 0)
        {
            return;
        }

        // Too long: first smaller by up to a quarter, then cut.
        var fitted = Math.Max(
            composer.Layout.Text(11.0),
            size * Math.Clamp(room / Typefaces.Measure(text, weight, size), 0.75, 1.0)
        );
        var shown = TextFit.Cut(text, weight, Math.Min(size, fitted), room);
        composer.Sheet.Write(shown, start, Math.Min(size, fitted), weight, ink);
        composer.Note(
            shown,
            LabelKind.Heading,
            SkyComposer.RoomOf(shown, start, Math.Min(size, fitted), weight)
        );
    }
}
