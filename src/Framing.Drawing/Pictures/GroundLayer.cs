namespace Framing.Drawing;

/// <summary>The sky itself: dim outside every panel, with a line of dots around them, and the backdrop.</summary>
internal sealed class GroundLayer(SkyComposer composer)
{
    public void Draw()
    {
        var palette = composer.Palette;
        var frame = Lines.Rectangle(composer.Chart.Frame);
        var backdrop = Backdrop();
        if (composer.Scene.Panels.Count == 0)
        {
            composer.Sheet.Fill(frame, palette.ChartInside);
            DrawBackdrop(backdrop, null);
            return;
        }

        composer.Sheet.Fill(frame, palette.ChartOutside);
        DrawBackdrop(backdrop is null ? null : Dimmed(backdrop), null);

        // Dots are drawn around every panel, and the panels' own sky over them: what is left runs around all together.
        var dots = OutsideDots(palette, composer.Unit);
        var inside = new Lines();
        foreach (var panel in composer.PanelLines)
        {
            foreach (var run in panel.Runs)
            {
                if (run.Closed)
                {
                    composer.Sheet.Draw(
                        Lines.Closed(Widened(run.Points, 5.5 * composer.Unit)),
                        dots
                    );
                    inside.Add(Clockwise(run.Points), closed: true);
                }
            }
        }

        if (!inside.IsEmpty)
        {
            composer.Sheet.Fill(inside, palette.ChartInside);
        }

        DrawBackdrop(backdrop, inside);
    }

    /// <summary>The line of dots around the panels.</summary>
    public static Stroke OutsideDots(Palette palette, double unit) =>
        new(palette.Outside, Math.Max(1.3, 2.0 * unit), [0.0, 6.5 * unit], Round: true);

    /// <summary>All the same way round: filled by winding, overlaps stay filled.</summary>
    private static PicturePoint[] Clockwise(PicturePoint[] points)
    {
        if (SignedArea(points) >= 0.0)
        {
            return points;
        }

        PicturePoint[] turned = [.. points];
        Array.Reverse(turned);
        return turned;
    }

    private static double SignedArea(PicturePoint[] points)
    {
        var area = 0.0;
        for (int i = 0, j = points.Length - 1; i < points.Length; j = i++)
        {
            area += (points[j].X * points[i].Y) - (points[i].X * points[j].Y);
        }

        return area;
    }

    /// <summary>A convex polygon with every side moved outwards.</summary>
    private static PicturePoint[] Widened(PicturePoint[] points, double by)
    {
        var outwards = SignedArea(points) > 0.0 ? by : -by;
        var wide = new PicturePoint[points.Length];
        for (var i = 0; i < points.Length; i++)
        {
            var before = Unit(points[i] - points[(i + points.Length - 1) % points.Length]);
            var after = Unit(points[(i + 1) % points.Length] - points[i]);
            var turn = 1.0 + (before.X * after.X) + (before.Y * after.Y);
            var normal = new PicturePoint(before.Y + after.Y, -before.X - after.X);
            wide[i] = points[i] + (normal * (outwards / Math.Max(0.2, turn)));
        }

        return wide;
    }

    private static PicturePoint Unit(PicturePoint step) =>
        step.Length > 0.0 ? step * (1.0 / step.Length) : step;

    private byte[]? Backdrop()
    {
        if (composer.Scene.Backdrop is not { } backdrop)
        {
            return null;
        }

        var chart = composer.Chart;
        var pixels = new byte[chart.Width * chart.Height * 4];
        backdrop.Fill(chart.ChartWorldCoordinates, chart.Width, chart.Height, pixels);
        if (!composer.Palette.TintsStars)
        {
            InRed(pixels);
        }

        return pixels;
    }

    private void DrawBackdrop(byte[]? pixels, Lines? within)
    {
        if (pixels is not null)
        {
            composer.Sheet.Add(new Mark.Image(composer.Chart.Frame, pixels, within));
        }
    }

    /// <summary>The picture at less than half its light, for the sky outside the panels.</summary>
    private static byte[] Dimmed(byte[] pixels)
    {
        var dim = new byte[pixels.Length];
        for (var i = 0; i < pixels.Length; i += 4)
        {
            dim[i] = (byte)(pixels[i] * 9 / 20);
            dim[i + 1] = (byte)(pixels[i + 1] * 9 / 20);
            dim[i + 2] = (byte)(pixels[i + 2] * 9 / 20);
            dim[i + 3] = pixels[i + 3];
        }

        return dim;
    }

    /// <summary>The brightness of the picture in red alone, at most 60 % of it: names over it stay readable.</summary>
    internal static void InRed(byte[] pixels)
    {
        for (var i = 0; i < pixels.Length; i += 4)
        {
            // Weights of red, green and blue in brightness (ITU-R BT.709: 0.2126, 0.7152, 0.0722), times 0.6, in 1024ths.
            pixels[i] = (byte)(
                ((pixels[i] * 131) + (pixels[i + 1] * 439) + (pixels[i + 2] * 44)) >> 10
            );
            pixels[i + 1] = 0;
            pixels[i + 2] = 0;
        }
    }
}
