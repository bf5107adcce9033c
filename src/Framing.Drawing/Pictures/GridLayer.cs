namespace Framing.Drawing;

/// <summary>The lines of right ascension and declination, and their values at the edges of the chart.</summary>
internal sealed class GridLayer(SkyComposer composer)
{
    private static readonly FrameEdge[] MeridianEdges =
    [
        FrameEdge.Bottom,
        FrameEdge.Top,
        FrameEdge.Left,
        FrameEdge.Right,
    ];

    private static readonly FrameEdge[] ParallelEdges =
    [
        FrameEdge.Left,
        FrameEdge.Right,
        FrameEdge.Bottom,
        FrameEdge.Top,
    ];

    private readonly IReadOnlyList<GridLine> lines = CoordinateGrid.Of(
        composer.Chart,
        Math.Min(125.0 * composer.Unit, Math.Min(composer.Chart.Width, composer.Chart.Height) / 2.2)
    );

    public void Draw()
    {
        var stroke = new Stroke(composer.Palette.Grid, Math.Max(0.7, 0.9 * composer.Unit));
        composer.Sheet.Group(
            "grid",
            null,
            () =>
            {
                foreach (var line in lines)
                {
                    composer.Sheet.Draw(line.Lines, stroke);
                }
            }
        );
    }

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
        var frame = composer.Chart.Frame;
        placer.Take(frame.Grown(-1.0));
        composer.Sheet.Group(
            "coordinates",
            null,
            () =>
            {
                var tick = 5.0 * composer.Unit;
                var stroke = new Stroke(composer.Palette.Rim, Math.Max(0.8, 1.0 * composer.Unit));
                foreach (var line in lines)
                {
                    var edges = line.IsMeridian ? MeridianEdges : ParallelEdges;
                    foreach (
                        var (edge, place) in line.Crossings.OrderBy(crossing =>
                            Array.IndexOf(edges, crossing.Edge)
                        )
                    )
                    {
                        if (
                            placer.Place([(RoomAt(edge, place, line.Label, size), 0.0)])
                            is not { } taken
                        )
                        {
                            continue;
                        }

                        composer.Sheet.Draw(
                            Lines.Open(place, place + (Outwards(edge) * tick)),
                            stroke
                        );
                        composer.Sheet.Write(
                            line.Label,
                            SkyComposer.StartIn(taken, size),
                            size,
                            TextWeight.Regular,
                            composer.Palette.PageSoft
                        );
                        composer.Note(line.Label, LabelKind.Coordinate, taken);
                        break;
                    }
                }
            }
        );
    }

    private static PicturePoint Outwards(FrameEdge edge) =>
        edge switch
        {
            FrameEdge.Left => new(-1.0, 0.0),
            FrameEdge.Right => new(1.0, 0.0),
            FrameEdge.Top => new(0.0, -1.0),
            _ => new(0.0, 1.0),
        };

    private Box RoomAt(FrameEdge edge, PicturePoint place, string label, double size)
    {
        var (width, height) = SkyComposer.Measure(label, size, TextWeight.Regular);
        var away = 8.0 * composer.Unit;

        // Capitals and figures are centred on the tick, not the room with its descent.
        var lower = Typefaces.Descent * size / 2.0;
        var middle = place with { Y = place.Y + lower };
        return edge switch
        {
            FrameEdge.Left => Box.Around(
                middle with
                {
                    X = place.X - away - (width / 2.0),
                },
                width,
                height
            ),
            FrameEdge.Right => Box.Around(
                middle with
                {
                    X = place.X + away + (width / 2.0),
                },
                width,
                height
            ),
            FrameEdge.Top => Box.Around(
                place with
                {
                    Y = place.Y - away - (height / 2.0),
                },
                width,
                height
            ),
            _ => Box.Around(place with { Y = place.Y + away + (height / 2.0) }, width, height),
        };
    }
}
