namespace Framing.Drawing;

/// <summary>Outlines of the target and of other objects, and their names.</summary>
internal sealed class ObjectLayer
{
    private const double MostNameCost = 6.0;

    private readonly SkyComposer composer;
    private readonly List<Entry> targets;
    private readonly List<Entry> others;
    private double namedArea;

    public ObjectLayer(SkyComposer composer)
    {
        this.composer = composer;
        targets = Visible(composer.Scene.Targets);
        others = Visible(composer.Scene.Objects);

        // The largest first: they are named first, and smaller ones are drawn over them.
        others.Sort(
            static (one, other) =>
            {
                var order = other.Object.Radius.CompareTo(one.Object.Radius);
                return order != 0
                    ? order
                    : string.CompareOrdinal(one.Object.Name, other.Object.Name);
            }
        );
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

    /// <summary>True when the chart shows an object of a kind, for the legend.</summary>
    public bool Shows(ChartObjectKind kind) => others.Exists(entry => entry.Object.Kind == kind);

    public void Avoid()
    {
        targets.ForEach(entry => composer.Placer.Avoid(entry.Lines));
        others.ForEach(entry => composer.Placer.Avoid(entry.Lines));
    }

    public void PlaceTargetNames()
    {
        var size = composer.Layout.Text(16.0);
        foreach (var entry in targets)
        {
            Place(
                entry,
                size,
                TextWeight.SemiBold,
                composer.Palette.Target,
                LabelKind.Target,
                double.MaxValue
            );
        }
    }

    public void PlaceNames()
    {
        var size = composer.Layout.Text(13.0);
        foreach (var entry in others)
        {
            if (namedArea > composer.RoomForNames * 0.65)
            {
                return;
            }

            if (
                Place(
                    entry,
                    size,
                    composer.Palette.Plain,
                    composer.Palette.ObjectText,
                    LabelKind.Object,
                    MostNameCost
                ) is
                { } room
            )
            {
                namedArea += room.Width * room.Height;
            }
        }
    }

    public void Draw()
    {
        var palette = composer.Palette;
        composer.Sheet.Group(
            "objects",
            null,
            () =>
                others.ForEach(entry =>
                    composer.Sheet.Draw(
                        entry.Lines,
                        LineOf(entry.Object.Kind, palette, composer.Unit)
                    )
                )
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

    private List<Entry> Visible(IReadOnlyList<ChartObject> objects)
    {
        var visible = new List<Entry>();
        foreach (var item in objects)
        {
            var lines = ChartLines.Of(composer.Chart, item.Outline);
            if (lines.Cross(composer.Chart.Frame))
            {
                visible.Add(new(item, lines));
            }
        }

        return visible;
    }

    private Box? Place(
        Entry entry,
        double size,
        TextWeight weight,
        Colour ink,
        LabelKind kind,
        double most
    )
    {
        var name = entry.Object.Name;
        if (name.Length == 0)
        {
            return null;
        }

        var (width, height) = SkyComposer.Measure(name, size, weight);
        composer.Placer.Begin(most);
        Offer(entry.Lines, width, height);
        var room = composer.Placer.Take();
        if (room is { } found)
        {
            composer.Name(new(name, found, size, weight, ink), kind);
        }

        return room;
    }

    /// <summary>Places around an outline, outside it and close to it; then inside, near its edge and in the middle.</summary>
    private void Offer(Lines lines, double width, double height)
    {
        const int ways = 16;
        var frame = composer.Chart.Frame;
        var placer = composer.Placer;
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
            var reach = (Math.Abs(way.X) * width / 2.0) + (Math.Abs(way.Y) * height / 2.0) + away;
            placer.Offer(Box.Around(rim + (way * reach), width, height), 0.05 * k);
            placer.Offer(Box.Around(rim - (way * reach), width, height), 1.5 + (0.05 * k));
        }

        var visible = lines.Bounds().Within(placer.Room);
        if (visible.Width > width * 1.6 && visible.Height > height * 2.5)
        {
            for (var quarter = 1; quarter <= 3; quarter++)
            {
                var middle = visible.Middle with
                {
                    Y = visible.Top + (visible.Height * quarter / 4.0),
                };
                placer.Offer(
                    Box.Around(middle, width, height),
                    quarter == 2 ? 2.5 : 2.5 + (0.1 * quarter)
                );
            }
        }
    }

    private static PicturePoint Farthest(Lines lines, PicturePoint way)
    {
        var best = default(PicturePoint);
        var most = double.MinValue;
        foreach (var run in lines.Runs)
        {
            foreach (var point in run.Points)
            {
                var distance = (point.X * way.X) + (point.Y * way.Y);
                if (distance > most)
                {
                    (best, most) = (point, distance);
                }
            }
        }

        return best;
    }

    private sealed class Entry(ChartObject item, Lines lines)
    {
        public ChartObject Object { get; } = item;

        public Lines Lines { get; } = lines;
    }
}
