using Framing.Nights;

namespace Framing.Drawing;

/// <summary>A picture of planned nights, a band each: how dark it is, how high the panels stand over the real skyline, the Moon, the blocks.</summary>
/// <remarks>The same nights, size and palette give the same bytes on every run.</remarks>
public sealed class NightPicture
{
    /// <summary>More nights than these are not drawn; the heading says so.</summary>
    public const int MostNights = 7;

    private readonly Sheet sheet;
    private readonly string title;

    private NightPicture(NightComposer composer, string title)
    {
        (sheet, this.title) = (composer.Sheet, title);
        Size = sheet.Size;
        Labels = composer.Labels;
    }

    /// <summary>The size in pixels: as wide as asked for, as high as the nights need.</summary>
    public PictureSize Size { get; }

    /// <summary>Every text of the picture with its room; none meets another.</summary>
    public IReadOnlyList<PlacedLabel> Labels { get; }

    /// <summary>Lays out a picture. Nothing is drawn yet.</summary>
    /// <param name="plan">The nights.</param>
    /// <param name="title">What stands above them.</param>
    /// <param name="size">Its width counts, and its height for a single night.</param>
    /// <param name="palette">Its colours.</param>
    /// <returns>The picture, ready to be written.</returns>
    public static NightPicture Compose(
        PlannedNights plan,
        string title,
        PictureSize size = default,
        PicturePalette palette = PicturePalette.Day
    )
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(title);
        var composer = new NightComposer(plan, title, size, palette);
        composer.Compose();
        return new(composer, title);
    }

    /// <summary>Draws the picture as a PNG file.</summary>
    /// <returns>The bytes of the file.</returns>
    public byte[] ToPng() => PngPainter.Paint(sheet);

    /// <summary>Draws the picture as an SVG document: the same marks as in <see cref="ToPng"/>, text as outlines.</summary>
    /// <returns>The text of the document, lines ended by a line feed.</returns>
    public string ToSvg() => SvgWriter.Write(sheet, title);
}
