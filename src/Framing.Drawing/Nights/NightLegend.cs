namespace Framing.Drawing;

/// <summary>What the marks of a night mean.</summary>
internal static class NightLegend
{
    public static void Draw(NightComposer composer, Box room)
    {
        var inks = composer.Inks;
        var unit = composer.Unit;
        var x = room.Left;
        var y = room.Top;
        var request = composer.Plan.Request;
        for (var i = 0; i < request.Filters.Count; i++)
        {
            var number = i;
            Entry(request.Filters[i].Name + ", panel's number", box => Fill(composer, box, number));
        }

        Entry("way of the panels", box => Stretch(box, new(inks.Target, 1.6 * unit)));
        if (request.Filters.Count > 0)
        {
            Entry("while they are shot", box => Stretch(box, new(inks.Block, 4.5 * unit)));
        }

        Entry(
            "Moon",
            box => Stretch(box, new(inks.Moon, 2.4 * unit, [0.0, 6.5 * unit], Round: true))
        );
        Entry(
            request.Site.Horizon.IsFlat ? "horizon" : "skyline below them",
            box =>
            {
                composer.Sheet.Fill(Lines.Rectangle(box), inks.Dark);
                composer.Sheet.Fill(Lines.Rectangle(box with { Top = box.Middle.Y }), inks.Ground);
                composer.Sheet.Draw(
                    Lines.Open(new(box.Left, box.Middle.Y), new(box.Right, box.Middle.Y)),
                    new(inks.Skyline, 1.6 * unit)
                );
            }
        );
        if (request.Limits.MinAltitude.Degrees > 0.0)
        {
            Entry(
                "lowest altitude shot",
                box => Stretch(box, new(inks.Skyline, 1.3 * unit, [9.0 * unit, 6.0 * unit]))
            );
        }

        foreach (
            var (text, ink) in new[]
            {
                ("Sun up", inks.Day),
                ("to −6°", inks.Civil),
                ("to −12°", inks.Nautical),
                ("to −18°", inks.Astronomical),
                ("dark", inks.Dark),
            }
        )
        {
            Entry(text, box => composer.Sheet.Fill(Lines.Rectangle(box), ink));
        }

        void Entry(string text, Action<Box> draw)
        {
            var size = composer.TextSize;
            var width = (size * 4.4) + Typefaces.Measure(text, composer.Palette.Plain, size);
            if (x + width > room.Right && x > room.Left)
            {
                (x, y) = (room.Left, y + (size * 2.2));
            }

            if (y + (size * 1.7) > room.Bottom)
            {
                return;
            }

            draw(new(x, y, x + (size * 2.4), y + (size * 1.4)));
            composer.Write(
                text,
                new(x + (size * 3.0), y + (size * 0.7) + (Typefaces.CapHeight * size / 2.0)),
                size,
                composer.Palette.Plain,
                composer.Palette.PageInk,
                LabelKind.Legend
            );
            x += width;
        }

        void Stretch(Box box, Stroke stroke)
        {
            composer.Sheet.Fill(Lines.Rectangle(box), inks.Dark);
            composer.Sheet.Draw(
                Lines.Open(
                    new(box.Left + (3.0 * unit), box.Middle.Y),
                    new(box.Right - (3.0 * unit), box.Middle.Y)
                ),
                stroke
            );
        }
    }

    /// <summary>Fills a block so that filters differ by shape as well: plain, slanting lines, more lines, open.</summary>
    public static void Fill(NightComposer composer, Box box, int filter)
    {
        var (inks, unit) = (composer.Inks, composer.Unit);
        var area = Lines.Rectangle(box);
        composer.Sheet.Fill(area, inks.Block);
        if (filter % 4 > 0)
        {
            // Lines at the ends only: the number in the middle stays clear.
            var end = Math.Min(9.0 * unit * (filter % 4), box.Width / 3.0);
            foreach (
                var part in new[]
                {
                    box with
                    {
                        Right = box.Left + end,
                    },
                    box with
                    {
                        Left = box.Right - end,
                    },
                }
            )
            {
                composer.Sheet.Draw(
                    Hatch.Over(Lines.Rectangle(part), part, 4.0 * unit),
                    new(inks.OnBlock, 1.5 * unit)
                );
            }
        }

        composer.Sheet.Draw(area, new(inks.OnBlock, Math.Max(1.0, unit)));
    }
}
