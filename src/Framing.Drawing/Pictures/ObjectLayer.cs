namespace Framing.Drawing;

/// <summary>Outlines of the target and of other objects, and their names.</summary>
internal sealed class ObjectLayer
{
    private const double MostNameCost = 6.0;

    private readonly SkyComposer composer;
    private readonly List<Entry> targets;
    private readonly List<Entry> others;
    private readonly List<(string Name, Box Room, double Size, bool IsTarget)> names = [];

    public ObjectLayer(SkyComposer composer)
    {
        this.composer = composer;
        targets = Visible(composer.Scene.Targets);

        // The largest first: they are named first, and smaller ones are drawn over them.
        others =
        [
            .. Visible(composer.Scene.Objects)
                .OrderByDescending(entry => entry.Object.Radius)
                .ThenBy(entry => entry.Object.Name, StringComparer.Ordinal),
        ];
    }

    public static Stroke TargetLine(Palette palette, double unit) =>
        new(palette.Target, Math.Max(1.2, 1.7 * unit), [9.0 * unit, 4.0 * unit]);

    public static Stroke LineOf(ChartObjectKind kind, Palette palette, double unit)
    {
        var width = Math.Max(0.9, 1.1 * unit);
        return kind switch
        {
            ChartObjectKind.DarkNebula => new(palette.Object, width, [5.0 * unit, 4.0 * unit]),
            ChartObjectKind.StarCluster => new(
                palette.Object,
                Math.Max(1.2, 1.7 * unit),
                [0.0, 4.2 * unit],
                Round: true
            ),
            ChartObjectKind.Galaxy => new(
                palette.Object,
                width,
                [9.0 * unit, 3.0 * unit, 1.6 * unit, 3.0 * unit]
            ),
            _ => new(palette.Object, width),
        };
    }

    /// <summary>The kinds that the chart shows, for the legend.</summary>
    public static IEnumerable<ChartObjectKind> KindsIn(SkyComposer composer) =>
        Enum.GetValues<ChartObjectKind>()
            .Where(kind =>
                composer.Scene.Objects.Any(item =>
                    item.Kind == kind
                    && IsVisible(composer, ChartLines.Of(composer.Chart, item.Outline))
                )
            );

    public void Avoid()
    {
        foreach (var entry in targets.Concat(others))
        {
            composer.Placer.Avoid(entry.Lines);
        }
    }

    public void PlaceTargetNames() => PlaceNames(targets, 16.0, TextWeight.SemiBold, 1e6);

    public void PlaceNames() => PlaceNames(others, 13.0, TextWeight.Regular, MostNameCost);

    public void Draw()
    {
        var palette = composer.Palette;
        composer.Sheet.Group(
            "objects",
            null,
            () =>
            {
                foreach (var entry in others)
                {
                    composer.Sheet.Draw(
                        entry.Lines,
                        LineOf(entry.Object.Kind, palette, composer.Unit)
                    );
                }
            }
        );
        composer.Sheet.Group(
            "target",
            null,
            () =>
                targets.ForEach(entry =>
                    composer.Sheet.Draw(entry.Lines, TargetLine(palette, composer.Unit))
                )
        );
    }

    public void DrawNames()
    {
        foreach (var (name, room, size, isTarget) in names)
        {
            composer.Sheet.Write(
                name,
                SkyComposer.StartIn(room, size),
                size,
                isTarget ? TextWeight.SemiBold : TextWeight.Regular,
                isTarget ? composer.Palette.Target : composer.Palette.ObjectText,
                composer.TextBorder
            );
        }
    }

    private static bool IsVisible(SkyComposer composer, Lines lines)
    {
        foreach (var (points, closed) in lines.Runs)
        {
            for (var i = closed ? 0 : 1; i < points.Length; i++)
            {
                var before = points[i == 0 ? points.Length - 1 : i - 1];
                if (composer.Chart.Frame.IsCrossedBy(before, points[i]))
                {
                    return true;
                }
            }
        }

        return false;
    }

    private List<Entry> Visible(IReadOnlyList<ChartObject> objects) =>
        [
            .. objects
                .Select(item => new Entry(item, ChartLines.Of(composer.Chart, item.Outline)))
                .Where(entry => IsVisible(composer, entry.Lines)),
        ];

    private void PlaceNames(
        IEnumerable<Entry> entries,
        double sizeAt1000,
        TextWeight weight,
        double most
    )
    {
        var size = composer.Layout.Text(sizeAt1000);
        foreach (var entry in entries)
        {
            var name = entry.Object.Name;
            if (name.Length == 0)
            {
                continue;
            }

            var (width, height) = SkyComposer.Measure(name, size, weight);
            if (composer.Placer.Place(Places(entry.Lines, width, height), most) is { } room)
            {
                names.Add((name, room, size, most > MostNameCost));
                composer.Note(
                    name,
                    most > MostNameCost ? LabelKind.Target : LabelKind.Object,
                    room
                );
            }
        }
    }

    /// <summary>Places around an outline, outside it and close to it; then inside, near its edge and in the middle.</summary>
    private IEnumerable<(Box, double)> Places(Lines lines, double width, double height)
    {
        const int ways = 16;
        var frame = composer.Chart.Frame;
        var away = 3.5 * composer.Unit;
        for (var k = 0; k < ways; k++)
        {
            // From straight above, to both sides in turn, to straight below.
            var turn = (k % 2 == 0 ? k / 2 : -((k + 1) / 2)) * Math.Tau / ways;
            var (sin, cos) = Math.SinCos(turn);
            var way = new PicturePoint(sin, -cos);
            var rim = Farthest(lines, way);
            if (!frame.Holds(rim))
            {
                continue;
            }

            // The box is pushed out until it just stands clear of the tangent there.
            var reach = (Math.Abs(way.X) * width / 2.0) + (Math.Abs(way.Y) * height / 2.0);
            yield return (Box.Around(rim + (way * (reach + away)), width, height), 0.05 * k);
            yield return (
                Box.Around(rim - (way * (reach + away)), width, height),
                1.5 + (0.05 * k)
            );
        }

        var all = lines.Runs.SelectMany(run => run.Points).ToList();
        var visible = new Box(
            all.Min(point => point.X),
            all.Min(point => point.Y),
            all.Max(point => point.X),
            all.Max(point => point.Y)
        ).Within(composer.Placer.Room);
        if (visible.Width > width * 1.6 && visible.Height > height * 2.5)
        {
            yield return (Box.Around(visible.Middle, width, height), 2.5);
            yield return (
                Box.Around(
                    visible.Middle with
                    {
                        Y = visible.Top + (visible.Height * 0.25),
                    },
                    width,
                    height
                ),
                2.6
            );
            yield return (
                Box.Around(
                    visible.Middle with
                    {
                        Y = visible.Top + (visible.Height * 0.75),
                    },
                    width,
                    height
                ),
                2.7
            );
        }
    }

    private static PicturePoint Farthest(Lines lines, PicturePoint way)
    {
        var best = default(PicturePoint);
        var most = double.MinValue;
        foreach (var point in lines.Runs.SelectMany(run => run.Points))
        {
            var distance = (point.X * way.X) + (point.Y * way.Y);
            if (distance > most)
            {
                (best, most) = (point, distance);
            }
        }

        return best;
    }

    private sealed record Entry(ChartObject Object, Lines Lines);
}
