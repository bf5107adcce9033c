using System.Globalization;
using Framing.Sky;

namespace Framing.Drawing;

/// <summary>Panels: solid edges, numbers in their middle, and the hatch over what falls short.</summary>
internal sealed class PanelLayer(SkyComposer composer)
{
    /// <summary>Distance of hatch lines over what no panel holds, in units.</summary>
    public const double HatchSpacing = 7.0;

    /// <summary>Distance of hatch lines where an overlap is thin: half as dense.</summary>
    public const double ThinSpacing = 12.0;

    private readonly List<Name> numbers = [];
    private readonly List<Lines> edges = composer.PanelLines;
    private bool badges;

    public static Stroke Edge(Palette palette, double unit) =>
        new(palette.Panel, Math.Max(1.3, 2.0 * unit));

    public static Stroke HatchLine(Palette palette, double unit) =>
        new(palette.FallsShort, Math.Max(1.0, 1.5 * unit));

    public static Stroke ThinLine(Palette palette, double unit) =>
        new(palette.FallsShort, Math.Max(0.8, 1.0 * unit));

    /// <summary>Each number in the middle of its panel; where panels are large enough in a badge.</summary>
    public void PlaceNumbers()
    {
        badges = edges.TrueForAll(lines => lines.IsEmpty || Side(lines) >= 90.0 * composer.Unit);
        for (var i = 0; i < edges.Count; i++)
        {
            var panel = composer.Scene.Panels[i];
            if (
                panel.Number == 0
                || edges[i].IsEmpty
                || !composer.Chart.TrySkyToPicture(panel.Centre, out var middle)
            )
            {
                continue;
            }

            // At most a third of the panel's shorter side; a panel too small for a readable number has none.
            var text = panel.Number.ToString(CultureInfo.InvariantCulture);
            var size = Math.Min(composer.Layout.Text(17.0), Side(edges[i]) / 3.2);
            if (size < 7.5)
            {
                continue;
            }

            var (width, height) = SkyComposer.Measure(text, size, TextWeight.SemiBold);
            var room = badges
                ? Box.Around(middle, Math.Max(width + (0.9 * size), 1.75 * size), 1.75 * size)
                : Box.Around(middle, width, height);
            if (composer.Placer.IsFree(room))
            {
                composer.Placer.Take(room);
                numbers.Add(new(text, room, size, TextWeight.SemiBold, composer.Palette.Panel));
                composer.Note(text, LabelKind.Panel, Box.Around(middle, width, height));
            }
        }
    }

    public void Avoid() => edges.ForEach(composer.Placer.Avoid);

    public void Draw()
    {
        var palette = composer.Palette;
        DrawHatch();
        var edge = Edge(palette, composer.Unit);
        var ground = new Stroke(palette.ChartOutside.At(0.55), edge.Width + (2.4 * composer.Unit));
        composer.Sheet.Group(
            "panels",
            null,
            () =>
            {
                edges.ForEach(lines => composer.Sheet.Draw(lines, ground));
                edges.ForEach(lines => composer.Sheet.Draw(lines, edge));
            }
        );
    }

    public void DrawNumbers()
    {
        var palette = composer.Palette;
        foreach (var number in numbers)
        {
            if (badges)
            {
                var shape = Lines.Closed(Rounded(number.Room));
                composer.Sheet.Fill(shape, palette.ChartOutside.At(0.8));
                composer.Sheet.Draw(shape, new(palette.Panel, Math.Max(1.0, 1.3 * composer.Unit)));
            }

            var middle = number.Room.Middle;
            var width = Typefaces.Measure(number.Text, number.Weight, number.Size);
            composer.Sheet.Write(
                number.Text,
                new(middle.X - (width / 2.0), middle.Y + (Typefaces.CapHeight * number.Size / 2.0)),
                number.Size,
                number.Weight,
                number.Ink,
                badges ? null : composer.TextBorder
            );
        }
    }

    /// <summary>The shorter side of a panel.</summary>
    private static double Side(Lines panel)
    {
        var points = panel.Runs[0].Points;
        return Math.Min((points[1] - points[0]).Length, (points[^1] - points[0]).Length);
    }

    /// <summary>A box with half-circle ends.</summary>
    private static PicturePoint[] Rounded(Box box)
    {
        const int steps = 24;
        var radius = box.Height / 2.0;
        var points = new PicturePoint[2 * (steps + 1)];
        for (var i = 0; i < points.Length; i++)
        {
            var side = i / (steps + 1);
            var middle = side == 0 ? box.Right - radius : box.Left + radius;
            var turn = ((i % (steps + 1)) / (double)steps) - 0.5 + side;
            var (sin, cos) = Math.SinCos(Math.PI * turn);
            points[i] = new(middle + (radius * cos), box.Middle.Y + (radius * sin));
        }

        return points;
    }

    private void DrawHatch()
    {
        var scene = composer.Scene;
        var all = new Lines();
        foreach (var ring in scene.FallsShort)
        {
            ChartLines.Add(all, composer.Chart, ring, closed: true);
        }

        DrawHatch("thin-overlaps", [.. scene.ThinOverlaps.Select(Ring)], ThinLine, ThinSpacing);
        DrawHatch("falls-short", [all], HatchLine, HatchSpacing);
        DrawHatch("gaps", [.. scene.Gaps.Select(Ring)], HatchLine, HatchSpacing);

        Lines Ring(IReadOnlyList<SkyDirection> ring)
        {
            var lines = new Lines();
            ChartLines.Add(lines, composer.Chart, ring, closed: true);
            return lines;
        }
    }

    /// <summary>Hatches areas, each by itself, so that one that lies over another does not clear it.</summary>
    private void DrawHatch(
        string name,
        List<Lines> areas,
        Func<Palette, double, Stroke> ink,
        double spacing
    )
    {
        areas.RemoveAll(area => area.IsEmpty);
        if (areas.Count == 0)
        {
            return;
        }

        var stroke = ink(composer.Palette, composer.Unit);
        composer.Sheet.Group(
            name,
            null,
            () =>
            {
                foreach (var area in areas)
                {
                    composer.Sheet.Draw(
                        Hatch.Over(area, composer.Chart.Frame, spacing * composer.Unit),
                        stroke
                    );
                    composer.Sheet.Draw(area, stroke with { Width = stroke.Width * 0.8 });
                }
            }
        );
    }
}
