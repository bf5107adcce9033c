using Framing.Sky;

namespace Framing.Drawing;

/// <summary>The lines of right ascension and declination, their values at the edges of the chart, and the poles.</summary>
internal sealed class GridLayer
{
    private readonly SkyComposer composer;
    private readonly IReadOnlyList<GridLine> lines;

    public GridLayer(SkyComposer composer)
    {
        this.composer = composer;
        var chart = composer.Chart;
        lines = CoordinateGrid.Of(
            chart,
            Math.Min(125.0 * composer.Unit, Math.Min(chart.Width, chart.Height) / 2.2)
        );
    }

    private Stroke Stroke => new(composer.Palette.Grid, Math.Max(0.7, 0.9 * composer.Unit));

    /// <summary>The values of parallels that close within the chart, beside the line, and the names of poles.</summary>
    public void PlaceInnerLabels()
    {
        foreach (var line in lines)
        {
            if (!line.IsMeridian && line.Crossings.Count == 0 && !line.Lines.IsEmpty)
            {
                var points = line.Lines.Runs[0].Points;
                composer.Placer.Begin();
                for (var k = 0; k < 16; k++)
                {
                    // From the lowest place of the circle on, alternately to both sides.
                    Offer(points[points.Length * Spread(k) / 16], line.Label, 0.2 * k);
                }

                Take(line.Label);
            }
        }

        foreach (var pole in (SkyDirection[])[SkyDirection.NorthPole, SkyDirection.SouthPole])
        {
            if (composer.Chart.TrySkyToPicture(pole, out var place) && composer.Chart.Holds(place))
            {
                var label = pole == SkyDirection.NorthPole ? "North pole" : "South pole";
                var (width, height) = Measure(label);
                var away = 6.0 * composer.Unit;
                composer.Placer.Begin();
                foreach (var side in (double[])[1.0, -1.0])
                {
                    foreach (var level in (double[])[1.0, -1.0])
                    {
                        composer.Placer.Offer(
                            Box.Around(
                                new(
                                    place.X + (side * (away + (width / 2.0))),
                                    place.Y + (level * (away + (height / 2.0)))
                                ),
                                width,
                                height
                            ),
                            0.0
                        );
                    }
                }

                Take(label);
            }
        }
    }

    public void Draw() =>
        composer.Sheet.Group(
            "grid",
            null,
            () =>
            {
                foreach (var line in lines)
                {
                    composer.Sheet.Draw(line.Lines, Stroke);
                }
            }
        );

    public void DrawEdgeLabels()
    {
        var layout = composer.Layout;
        var size = layout.EdgeTextSize;
        var room = new Box(
            2.0,
            layout.HeadingBottom,
            layout.LegendStandsBeside && layout.Legend is { } beside
                ? beside.Left - (6.0 * composer.Unit)
                : layout.Size.Width - 2.0,
            layout.LegendStandsBelow && layout.Legend is { } below
                ? below.Top
                : layout.Size.Height - 2.0
        );
        var placer = new LabelPlacer(room, size * 0.5);
        placer.Take(composer.Chart.Frame.Grown(-1.0));
        composer.Sheet.Group(
            "coordinates",
            null,
            () =>
            {
                foreach (var line in lines)
                {
                    DrawEdgeLabel(placer, line, size);
                }
            }
        );
    }

    /// <summary>One label a line: below or beside by preference, elsewhere if there is no room.</summary>
    private void DrawEdgeLabel(LabelPlacer placer, GridLine line, double size)
    {
        EdgeCrossing? chosen = null;
        foreach (var crossing in line.Crossings)
        {
            if (
                placer.IsFree(RoomAt(crossing, line.Label, size))
                && (chosen is null || Rank(line, crossing) < Rank(line, chosen))
            )
            {
                chosen = crossing;
            }
        }

        if (chosen is null)
        {
            return;
        }

        var room = RoomAt(chosen, line.Label, size);
        placer.Take(room);
        composer.Sheet.Draw(
            Lines.Open(
                chosen.Place,
                chosen.Place + (Outwards(chosen.Edge) * (5.0 * composer.Unit))
            ),
            new(composer.Palette.Rim, Math.Max(0.8, composer.Unit))
        );
        composer.Sheet.Write(
            line.Label,
            SkyComposer.StartIn(room, size),
            size,
            composer.Palette.Plain,
            composer.Palette.PageSoft
        );
        composer.Note(line.Label, LabelKind.Coordinate, room);
    }

    private static int Rank(GridLine line, EdgeCrossing crossing) =>
        (crossing.Edge, line.IsMeridian) switch
        {
            (FrameEdge.Bottom, true) or (FrameEdge.Left, false) => 0,
            (FrameEdge.Top, true) or (FrameEdge.Right, false) => 1,
            (FrameEdge.Left, _) or (FrameEdge.Bottom, _) => 2,
            _ => 3,
        };

    private static int Spread(int k) => (12 + (k % 2 == 0 ? k / 2 : -((k + 1) / 2))) & 15;

    private static PicturePoint Outwards(FrameEdge edge) =>
        edge switch
        {
            FrameEdge.Left => new(-1.0, 0.0),
            FrameEdge.Right => new(1.0, 0.0),
            FrameEdge.Top => new(0.0, -1.0),
            _ => new(0.0, 1.0),
        };

    private (double Width, double Height) Measure(string label) =>
        SkyComposer.Measure(label, composer.Layout.EdgeTextSize, composer.Palette.Plain);

    private void Offer(PicturePoint middle, string label, double cost)
    {
        var (width, height) = Measure(label);
        composer.Placer.Offer(Box.Around(middle, width, height), cost);
    }

    private void Take(string label)
    {
        if (composer.Placer.Take() is { } room)
        {
            composer.Name(
                new(
                    label,
                    room,
                    composer.Layout.EdgeTextSize,
                    composer.Palette.Plain,
                    composer.Palette.StarText
                ),
                LabelKind.Coordinate
            );
        }
    }

    private Box RoomAt(EdgeCrossing crossing, string label, double size)
    {
        var (width, height) = SkyComposer.Measure(label, size, composer.Palette.Plain);
        var away = 8.0 * composer.Unit;
        var outwards = Outwards(crossing.Edge);

        // Beside the chart capitals and figures are centred on the tick, not the room with its descent.
        var lower = outwards.X != 0.0 ? Typefaces.Descent * size / 2.0 : 0.0;
        return Box.Around(
            new(
                crossing.Place.X + (outwards.X * (away + (width / 2.0))),
                crossing.Place.Y + (outwards.Y * (away + (height / 2.0))) + lower
            ),
            width,
            height
        );
    }
}
