using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Drawing;

/// <summary>A picture of the sky: catalogue stars, objects, the target and the panels of a plan over it.</summary>
/// <remarks>
/// <para>
/// The same scene, size and palette give the same bytes on every run, whatever the culture, the time zone and the fonts of
/// the machine.
/// </para>
/// <para>
/// North is up unless the view says otherwise; the mark of north and east holds for its own place in the chart. The scale
/// bar holds for the middle of the chart.
/// </para>
/// </remarks>
public sealed class SkyPicture
{
    private readonly Sheet sheet;
    private readonly string title;

    private SkyPicture(SkyComposer composer)
    {
        sheet = composer.Sheet;
        title = composer.Scene.Title;
        Chart = composer.Chart;
        Labels = composer.Labels;
        FaintestMagnitude = composer.Sizes.Faintest;
        Mark = composer.Mark;
        Bar = composer.Bar;
        Size = sheet.Size;
    }

    /// <summary>The size in pixels.</summary>
    public PictureSize Size { get; }

    /// <summary>Where the chart stands, and which direction each of its pixels shows.</summary>
    public ChartGeometry Chart { get; }

    /// <summary>Every text of the picture with its room. Those that found none are left out.</summary>
    public IReadOnlyList<PlacedLabel> Labels { get; }

    /// <summary>The magnitude (Johnson V) down to which stars are drawn.</summary>
    public double FaintestMagnitude { get; }

    internal DirectionMark Mark { get; }

    internal ScaleBar Bar { get; }

    /// <summary>Lays out a picture. Nothing is drawn yet.</summary>
    /// <param name="scene">What it shows.</param>
    /// <param name="size">Its size; 1600 x 1000 by default.</param>
    /// <param name="palette">Its colours.</param>
    /// <returns>The picture, ready to be written.</returns>
    public static SkyPicture Compose(
        SkyScene scene,
        PictureSize size = default,
        PicturePalette palette = PicturePalette.Day
    )
    {
        ArgumentNullException.ThrowIfNull(scene);
        var composer = new SkyComposer(scene, size, Palette.Of(palette));
        composer.Compose();
        return new(composer);
    }

    /// <summary>Draws a small picture and forgets it, so that the first real one finds everything loaded.</summary>
    /// <remarks>
    /// The first picture of a process costs about three times as much as the next: the drawing library and the typeface are
    /// loaded and code is compiled. Called on another thread at the start of a program that will want a picture, this hides
    /// that behind the reading of plans and tables.
    /// </remarks>
    public static void Warm()
    {
        var centre = SkyDirection.FromDegrees(0.0, 60.0);
        var outline = SkyOutline.Ellipse(
            centre,
            Angle.FromDegrees(2.0),
            Angle.FromDegrees(1.0),
            PositionAngle.North
        );
        var corners = new FieldShape(0.06, 0.04).Corners(
            new(centre, PositionAngle.North),
            mirrored: false
        );
        var scene = new SkyScene
        {
            View = ChartView.Around(corners),
            Title = "N",
            Summary = "E",
            Stars = [new(centre, 3.0, 0.5, "α")],
            Objects = [new("B", ChartObjectKind.Nebula, outline)],
            Targets = [new("A", ChartObjectKind.DarkNebula, outline)],
            Panels = [new(1, centre, corners)],
            FallsShort = [corners],
            Gaps = [corners],
            ThinOverlaps = [corners],
        };
        _ = Compose(scene, new(640, 400)).ToPng();
    }

    /// <summary>The chart that a scene's view gets in a picture of some size, before anything is drawn.</summary>
    /// <param name="scene">The scene; its view, title and summary matter.</param>
    /// <param name="size">The size of the picture.</param>
    /// <returns>The chart: a little more sky than the view asks for, as the shape of the picture has it.</returns>
    public static ChartGeometry ChartOf(SkyScene scene, PictureSize size = default)
    {
        ArgumentNullException.ThrowIfNull(scene);
        return SkyComposer.ChartOf(scene, SkyComposer.LayoutOf(scene, size));
    }

    /// <summary>Draws the picture as a PNG file.</summary>
    /// <returns>The bytes of the file.</returns>
    public byte[] ToPng() => PngPainter.Paint(sheet);

    /// <summary>Draws the picture as an SVG document: the same marks as in <see cref="ToPng"/>, text as outlines.</summary>
    /// <returns>The text of the document, lines ended by a line feed.</returns>
    public string ToSvg() => SvgWriter.Write(sheet, title);
}
