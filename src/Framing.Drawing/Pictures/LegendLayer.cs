using System.Globalization;
using Framing.Sky;

namespace Framing.Drawing;

/// <summary>The legend: only what the chart really shows.</summary>
internal sealed class LegendLayer
{
    private readonly SkyComposer composer;
    private readonly ObjectLayer objects;
    private readonly Box room;
    private double x;
    private double y;

    private LegendLayer(SkyComposer composer, ObjectLayer objects, Box room)
    {
        this.composer = composer;
        this.objects = objects;
        this.room = room;
        x = room.Left;
        y = room.Top;
    }

    private double TextSize => composer.Layout.LegendTextSize;

    private double Row => composer.Layout.LegendRow;

    private double SampleWidth => TextSize * 2.9;

    private bool FlowsAcross => composer.Layout.LegendStandsBelow;

    public static void Draw(SkyComposer composer, ObjectLayer objects)
    {
        if (composer.Layout.Legend is { } room)
        {
            composer.Sheet.Group("legend", null, new LegendLayer(composer, objects, room).DrawAll);
        }
    }

    private static bool IsFrame(SkyScene scene) => scene.Panels[0].Number == 0;

    private void DrawAll()
    {
        var palette = composer.Palette;
        var unit = composer.Unit;
        var scene = composer.Scene;
        if (scene.Panels.Count > 0)
        {
            Entry(
                scene.Panels[0].Number == 0 ? "What the camera shows" : "Panel and its number",
                sample => Patch(sample, palette.ChartInside, PanelLayer.Edge(palette, unit))
            );
        }

        foreach (var frame in scene.Frames.Take(1))
        {
            Entry(frame.Name, sample => Stretch(sample, FrameLayer.Edge(palette, unit)));
        }

        if (scene.Targets.Count > 0)
        {
            Entry(
                "Outline of the target",
                sample => Stretch(sample, ObjectLayer.TargetLine(palette, unit))
            );
        }

        Hatched(
            [.. scene.FallsShort, .. scene.Gaps],
            (scene.FallsShort.Count > 0, scene.Gaps.Count > 0) switch
            {
                (true, true) => "In no panel: short, or a gap",
                (true, false) => "Falls short: in no panel",
                _ => "Gap between panels",
            },
            PanelLayer.HatchLine,
            dense: true
        );
        Hatched(scene.ThinOverlaps, "Overlap less than planned", PanelLayer.ThinLine, dense: false);
        if (scene.Panels.Count > 0)
        {
            Entry(
                scene.Panels[0].Number == 0 ? "Sky outside the frame" : "Sky outside every panel",
                sample => Stretch(sample, GroundLayer.OutsideDots(palette, unit))
            );
        }

        foreach (var kind in Enum.GetValues<ChartObjectKind>())
        {
            if (objects.Shows(kind))
            {
                Entry(
                    NameOf(kind),
                    sample => Stretch(sample, ObjectLayer.LineOf(kind, palette, unit))
                );
            }
        }

        if (HasMadeUpStars(scene))
        {
            Entry(
                "Star, made up",
                sample =>
                {
                    composer.Sheet.Fill(Lines.Rectangle(sample), palette.ChartInside);
                    composer.Sheet.Add(
                        new Mark.Rings(
                            [new(sample.Middle, 2.4 * unit)],
                            StarLayer.MadeUpRing(palette, unit)
                        )
                    );
                }
            );
        }

        if (scene.Backdrop is { IsMadeUp: true })
        {
            Entry("Glow, made up", Clouds);
        }

        Magnitudes();
        Facts();
    }

    private void Hatched(
        IReadOnlyList<IReadOnlyList<SkyDirection>> areas,
        string text,
        Func<Palette, double, Stroke> ink,
        bool dense
    )
    {
        if (areas.Count == 0)
        {
            return;
        }

        var palette = composer.Palette;
        var unit = composer.Unit;
        Entry(
            text,
            sample =>
            {
                var area = Lines.Rectangle(sample);
                composer.Sheet.Fill(area, dense ? palette.ChartOutside : palette.ChartInside);
                composer.Sheet.Draw(
                    Hatch.Over(area, sample, (dense ? 6.0 : 10.0) * unit),
                    ink(palette, unit)
                );
            }
        );
    }

    private static bool HasMadeUpStars(SkyScene scene)
    {
        foreach (var star in scene.Stars)
        {
            if (star.MadeUp)
            {
                return true;
            }
        }

        return false;
    }

    private static string NameOf(ChartObjectKind kind) =>
        kind switch
        {
            ChartObjectKind.DarkNebula => "Dark nebula",
            ChartObjectKind.StarCluster => "Star cluster",
            ChartObjectKind.Galaxy => "Galaxy",
            _ => "Nebula",
        };

    private static string Round(double degrees) =>
        degrees >= 10.0 ? string.Create(CultureInfo.InvariantCulture, $"{degrees:0}°")
        : degrees >= 1.0 ? string.Create(CultureInfo.InvariantCulture, $"{degrees:0.0}°")
        : string.Create(CultureInfo.InvariantCulture, $"{degrees * 60.0:0}′");

    private void Entry(string text, Action<Box> draw)
    {
        // Below the chart entries stand in columns, as many as there is room for.
        var widest = SampleWidth + (TextSize * 14.0);
        var width = room.Width / Math.Max(1.0, Math.Floor(room.Width / widest));
        if (FlowsAcross && x + width > room.Right + 1.0 && x > room.Left)
        {
            (x, y) = (room.Left, y + Row);
        }

        if (y + Row > room.Bottom)
        {
            return;
        }

        var sample = new Box(x, y + (Row * 0.16), x + SampleWidth, y + (Row * 0.84));
        draw(sample);
        Write(
            text,
            new(
                sample.Right + (TextSize * 0.8),
                sample.Middle.Y + (Typefaces.CapHeight * TextSize / 2.0)
            ),
            composer.Palette.PageInk,
            composer.Palette.Plain
        );
        if (FlowsAcross)
        {
            x += width;
        }
        else
        {
            y += Row;
        }
    }

    private void Patch(Box sample, Colour fill, Stroke stroke)
    {
        var area = Lines.Rectangle(sample.Grown(-stroke.Width / 2.0));
        composer.Sheet.Fill(area, fill);
        composer.Sheet.Draw(area, stroke);
    }

    /// <summary>A piece of made-up light on a piece of sky.</summary>
    private void Clouds(Box sample)
    {
        var (width, height) = ((int)sample.Width, (int)sample.Height);
        var (left, top) = (Math.Floor(sample.Left), Math.Floor(sample.Top));
        var place = new Box(left, top, left + width, top + height);
        composer.Sheet.Fill(Lines.Rectangle(place), composer.Palette.ChartInside);
        composer.Sheet.Add(
            new Mark.Image(place, MadeUpNebulae.Sample(width, height, composer.Palette), null)
        );
    }

    /// <summary>A piece of line on a piece of sky.</summary>
    private void Stretch(Box sample, Stroke stroke)
    {
        composer.Sheet.Fill(Lines.Rectangle(sample), composer.Palette.ChartOutside);
        var inset = 5.0 * composer.Unit;
        composer.Sheet.Draw(
            Lines.Open(
                new(sample.Left + inset, sample.Middle.Y),
                new(sample.Right - inset, sample.Middle.Y)
            ),
            stroke
        );
    }

    private void Magnitudes()
    {
        if (composer.Scene.Stars.Count == 0)
        {
            return;
        }

        if (FlowsAcross && x > room.Left)
        {
            (x, y) = (room.Left, y + Row);
        }

        y += Row * 0.3;
        var sizes = composer.Sizes;
        var faintest = (int)Math.Floor(sizes.Faintest);
        var magnitudes = new List<int>();
        for (var magnitude = faintest; magnitudes.Count < 5 && magnitude > -2; magnitude -= 2)
        {
            if (sizes.RadiusOf(magnitude) > Row * 0.62)
            {
                break;
            }

            magnitudes.Insert(0, magnitude);
        }

        var height = Row * 1.5;
        if (y + height + Row > room.Bottom)
        {
            return;
        }

        var width = FlowsAcross ? Math.Min(room.Width, TextSize * 16.0) : room.Width;
        var strip = new Box(room.Left, y, room.Left + width, y + height);
        composer.Sheet.Fill(Lines.Rectangle(strip), composer.Palette.ChartInside);
        for (var i = 0; i < magnitudes.Count; i++)
        {
            var middle = new PicturePoint(
                strip.Left + (strip.Width * (i + 0.5) / magnitudes.Count),
                strip.Middle.Y
            );
            var magnitude = magnitudes[i];
            composer.Sheet.Add(
                new Mark.Dots(
                    [new(middle, sizes.RadiusOf(magnitude))],
                    composer.Palette.Star.At(StarSizes.OpacityOf(sizes.OpacityStepOf(magnitude)))
                )
            );
            var text = magnitude.ToString(CultureInfo.InvariantCulture).Replace('-', '−');
            var size = TextSize * 0.9;
            var textWidth = Typefaces.Measure(text, composer.Palette.Plain, size);
            Write(
                text,
                new(middle.X - (textWidth / 2.0), strip.Bottom + (size * 1.25)),
                composer.Palette.PageSoft,
                composer.Palette.Plain,
                size
            );
        }

        y = strip.Bottom + (TextSize * 2.7);
        if (y < room.Bottom)
        {
            Write(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Magnitude V, stars to {sizes.Faintest:0.#}"
                ),
                new(room.Left, y),
                composer.Palette.PageInk,
                composer.Palette.Plain
            );
        }

        y += Row * 0.7;
        x = room.Left;
    }

    private void Facts()
    {
        var chart = composer.Chart;
        var view = chart.View;
        List<string> facts =
        [
            string.Create(
                CultureInfo.InvariantCulture,
                $"Chart {Round(chart.FieldWidth.Degrees)} × {Round(chart.FieldHeight.Degrees)}"
            ),
        ];
        if (view.Mirrored)
        {
            facts.Add("Mirrored, as the camera shows it");
        }

        if (view.Up.Degrees is > 0.05 and < 359.95)
        {
            facts.Add(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Up is position angle {view.Up.Degrees:0.0}°"
                )
            );
        }

        foreach (var fact in facts)
        {
            y += Row * 0.1;
            if (y + TextSize > room.Bottom)
            {
                return;
            }

            Write(
                fact,
                new(room.Left, y + (Typefaces.CapHeight * TextSize)),
                composer.Palette.PageSoft,
                composer.Palette.Plain
            );
            y += Row * 0.65;
        }
    }

    private void Write(
        string text,
        PicturePoint start,
        Colour ink,
        TextWeight weight,
        double? size = null
    )
    {
        var used = size ?? TextSize;
        composer.Sheet.Write(text, start, used, weight, ink);
        composer.Note(text, LabelKind.Legend, SkyComposer.RoomOf(text, start, used, weight));
    }
}
