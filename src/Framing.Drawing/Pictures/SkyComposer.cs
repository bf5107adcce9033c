namespace Framing.Drawing;

/// <summary>Turns a scene into a sheet of marks, layer after layer.</summary>
internal sealed class SkyComposer
{
    /// <summary>How much of the chart the names of objects and stars may cover.</summary>
    private const double NamedPart = 0.055;

    private readonly List<PlacedLabel> labels = [];
    private readonly List<Name> names = [];

    public SkyComposer(SkyScene scene, PictureSize size, Palette palette)
    {
        Scene = scene;
        Palette = palette;
        Layout = LayoutOf(scene, size);
        Chart = ChartOf(scene, Layout);
        Sheet = new(size, palette.Page);
        Placer = new(Chart.Frame.Grown(-5.0 * Layout.Unit), 3.0 * Layout.Unit);
        Bar = ScaleBar.For(Chart, 0.2 * Chart.Width);
        Mark = DirectionMark.At(Chart, Chart.Frame.Middle);
        Sizes = new(0.0, 0.0, 0.0);
        foreach (var panel in scene.Panels)
        {
            PanelLines.Add(ChartLines.Of(Chart, panel.Corners));
        }
    }

    public SkyScene Scene { get; }

    public Palette Palette { get; }

    public PictureLayout Layout { get; }

    public ChartGeometry Chart { get; }

    public Sheet Sheet { get; }

    public LabelPlacer Placer { get; }

    /// <summary>The sides of every panel, in the scene's order.</summary>
    public List<Lines> PanelLines { get; } = [];

    public ScaleBar Bar { get; }

    public DirectionMark Mark { get; set; }

    public StarSizes Sizes { get; set; }

    public IReadOnlyList<PlacedLabel> Labels => labels;

    public double Unit => Layout.Unit;

    /// <summary>The room that the names of objects and stars may take together, in square pixels.</summary>
    public double RoomForNames => NamedPart * Chart.Frame.Width * Chart.Frame.Height;

    /// <summary>The ground under text in the chart: a border that keeps lines off the letters.</summary>
    public Stroke TextBorder =>
        new(Palette.ChartInside.At(0.85), Math.Max(2.0, 3.2 * Unit), Round: true);

    public static PictureLayout LayoutOf(SkyScene scene, PictureSize size) =>
        new(size, scene.Title.Length > 0, scene.Summary.Length > 0, scene.HasLegend);

    public static ChartGeometry ChartOf(SkyScene scene, PictureLayout layout) =>
        new(scene.View, layout.Size, layout.Chart);

    public void Compose()
    {
        var ground = new GroundLayer(this);
        var stars = new StarLayer(this);
        var objects = new ObjectLayer(this);
        var panels = new PanelLayer(this);
        var frames = new FrameLayer(this);
        var marks = new MarkLayer(this);
        var grid = new GridLayer(this);

        // Room first, by weight: what is always there, then names from the target down to stars.
        marks.Place();
        panels.PlaceNumbers();
        objects.Avoid();
        panels.Avoid();
        frames.Avoid();
        stars.Avoid();
        objects.PlaceTargetNames();
        stars.PlaceBrightNames();
        objects.PlaceNames();
        stars.PlaceNames();
        grid.PlaceInnerLabels();

        HeadingLayer.Draw(this);
        Sheet.Group(
            "chart",
            Chart.Frame,
            () =>
            {
                ground.Draw();
                grid.Draw();
                objects.Draw();
                panels.Draw();
                frames.Draw();
                stars.Draw();
                DrawNames();
                panels.DrawNumbers();
                marks.Draw();
            }
        );
        Sheet.Draw(Lines.Rectangle(Chart.Frame), new(Palette.Rim, Math.Max(1.0, 1.2 * Unit)));
        grid.DrawEdgeLabels();
        LegendLayer.Draw(this, objects);
    }

    /// <summary>The room of a text that starts at the left end of its base line.</summary>
    public static Box RoomOf(string text, PicturePoint start, double size, TextWeight weight) =>
        new(
            start.X,
            start.Y - (Typefaces.CapHeight * size),
            start.X + Typefaces.Measure(text, weight, size),
            start.Y + (Typefaces.Descent * size)
        );

    /// <summary>Where a text starts that fills a room of <see cref="RoomOf"/>.</summary>
    public static PicturePoint StartIn(Box room, double size) =>
        new(room.Left, room.Bottom - (Typefaces.Descent * size));

    /// <summary>Width and height of a text's room.</summary>
    public static (double Width, double Height) Measure(
        string text,
        double size,
        TextWeight weight
    ) => (Typefaces.Measure(text, weight, size), (Typefaces.CapHeight + Typefaces.Descent) * size);

    /// <summary>Adds a text in the chart that has found its room.</summary>
    public void Name(Name name, LabelKind kind)
    {
        names.Add(name);
        Note(name.Text, kind, name.Room);
    }

    public void Note(string text, LabelKind kind, Box room) =>
        labels.Add(new(text, kind, room.Left, room.Top, room.Right, room.Bottom));

    private void DrawNames() =>
        Sheet.Group(
            "names",
            null,
            () =>
            {
                foreach (var name in names)
                {
                    Sheet.Write(
                        name.Text,
                        StartIn(name.Room, name.Size),
                        name.Size,
                        name.Weight,
                        name.Ink,
                        TextBorder
                    );
                }
            }
        );
}
