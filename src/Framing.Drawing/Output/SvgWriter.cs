using System.Globalization;
using System.Runtime.InteropServices;
using System.Security;
using System.Text;
using System.Xml;
using SkiaSharp;

namespace Framing.Drawing;

/// <summary>Writes a sheet as an SVG 1.1 document. Text is drawn as outlines, so that no viewer needs the typeface.</summary>
internal sealed class SvgWriter
{
    private readonly StringBuilder body = new();
    private readonly StringBuilder definitions = new();
    private int clips;

    private SvgWriter() { }

    public static string Write(Sheet sheet, string title)
    {
        var writer = new SvgWriter();
        foreach (var mark in sheet.Marks)
        {
            writer.Write(mark);
        }

        var size = sheet.Size;
        return string.Create(
                CultureInfo.InvariantCulture,
                $"""
                <svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="{size.Width}" height="{size.Height}" viewBox="0 0 {size.Width} {size.Height}" role="img">
                <title>{Escaped(title)}</title>
                <defs>
                {writer.definitions}</defs>
                <rect width="{size.Width}" height="{size.Height}" fill="{sheet.Ground}"/>
                {writer.body}</svg>

                """
            )
            .ReplaceLineEndings("\n");
    }

    private void Write(Mark mark)
    {
        switch (mark)
        {
            case Mark.Begin begin:
                Line(
                    begin.Clip is { } clip
                        ? $"<g id=\"{begin.Name}\" clip-path=\"url(#{Clip(Lines.Rectangle(clip))})\">"
                        : $"<g id=\"{begin.Name}\">"
                );
                break;
            case Mark.End:
                Line("</g>");
                break;
            case Mark.Shape shape:
                Line(
                    $"<path d=\"{Data(shape.Lines)}\"{Filled(shape.Fill)}{Stroked(shape.Stroke)}/>"
                );
                break;
            case Mark.Dots dots:
                Round(dots.Places, Filled(dots.Fill));
                break;
            case Mark.Rings rings:
                Round(rings.Places, Filled(null) + Stroked(rings.Stroke));
                break;
            case Mark.Writing writing:
                Line(
                    $"<path aria-label=\"{Escaped(writing.Text)}\" d=\"{Outlines(writing)}\"{Filled(writing.Ink)}{Stroked(writing.Border)}{(writing.Border is null ? string.Empty : " paint-order=\"stroke\"")}/>"
                );
                break;
            case Mark.Image image:
                WriteImage(image);
                break;
        }
    }

    private void Round(IReadOnlyList<Dot> places, string style)
    {
        Line($"<g{style}>");
        foreach (var dot in places)
        {
            Line(
                $"<circle cx=\"{Number(dot.Middle.X)}\" cy=\"{Number(dot.Middle.Y)}\" r=\"{Number(dot.Radius)}\"/>"
            );
        }

        Line("</g>");
    }

    private void WriteImage(Mark.Image image)
    {
        var info = new SKImageInfo(
            (int)image.Place.Width,
            (int)image.Place.Height,
            SKColorType.Rgba8888,
            SKAlphaType.Unpremul
        );
        var pinned = GCHandle.Alloc(image.Pixels, GCHandleType.Pinned);
        try
        {
            using var pixels = new SKPixmap(info, pinned.AddrOfPinnedObject());
            using var png =
                pixels.Encode(new SKPngEncoderOptions(SKPngEncoderFilterFlags.Sub, zLibLevel: 6))
                ?? throw new InvalidOperationException("The backdrop could not be written as PNG.");
            var clip = image.Within is { } within ? $" clip-path=\"url(#{Clip(within)})\"" : "";
            var place = image.Place;
            Line(
                $"<g{clip}><image x=\"{Number(place.Left)}\" y=\"{Number(place.Top)}\" width=\"{Number(place.Width)}\" height=\"{Number(place.Height)}\" xlink:href=\"data:image/png;base64,{Convert.ToBase64String(png.Span)}\"/></g>"
            );
        }
        finally
        {
            pinned.Free();
        }
    }

    private string Clip(Lines lines)
    {
        var name = string.Create(CultureInfo.InvariantCulture, $"clip-{++clips}");
        definitions
            .Append("<clipPath id=\"")
            .Append(name)
            .Append("\"><path d=\"")
            .Append(Data(lines))
            .Append("\"/></clipPath>\n");
        return name;
    }

    private void Line(string text) => body.Append(text).Append('\n');

    private static string Data(Lines lines)
    {
        var data = new StringBuilder();
        foreach (var run in lines.Runs)
        {
            for (var i = 0; i < run.Points.Length; i++)
            {
                data.Append(i == 0 ? 'M' : 'L');
                Append(data, run.Points[i].X, run.Points[i].Y);
            }

            if (run.Closed)
            {
                data.Append('Z');
            }
        }

        return data.ToString();
    }

    private static string Outlines(Mark.Writing writing)
    {
        using var font = Typefaces.Font(writing.Weight, writing.Size);
        using var path = font.GetTextPath(
            writing.Text,
            new SKPoint((float)writing.Start.X, (float)writing.Start.Y)
        );
        var data = new StringBuilder();
        using var iterator = path.CreateRawIterator();
        Span<SKPoint> points = stackalloc SKPoint[4];
        while (true)
        {
            switch (iterator.Next(points))
            {
                case SKPathVerb.Move:
                    data.Append('M');
                    Append(data, points[0].X, points[0].Y);
                    break;
                case SKPathVerb.Line:
                    data.Append('L');
                    Append(data, points[1].X, points[1].Y);
                    break;
                case SKPathVerb.Quad:
                    data.Append('Q');
                    Append(data, points[1].X, points[1].Y);
                    data.Append(' ');
                    Append(data, points[2].X, points[2].Y);
                    break;
                case SKPathVerb.Cubic:
                    data.Append('C');
                    Append(data, points[1].X, points[1].Y);
                    data.Append(' ');
                    Append(data, points[2].X, points[2].Y);
                    data.Append(' ');
                    Append(data, points[3].X, points[3].Y);
                    break;
                case SKPathVerb.Close:
                    data.Append('Z');
                    break;
                case SKPathVerb.Done:
                    return data.ToString();
                default:
                    throw new InvalidOperationException(
                        $"The outline of \"{writing.Text}\" holds a curve that no font file has."
                    );
            }
        }
    }

    private static string Filled(Colour? fill) =>
        fill is { } colour
            ? $" fill=\"{colour}\"{Opacity("fill-opacity", colour)}"
            : " fill=\"none\"";

    private static string Stroked(Stroke? given)
    {
        if (given is not { } stroke)
        {
            return string.Empty;
        }

        var style = new StringBuilder(
            $" stroke=\"{stroke.Colour}\"{Opacity("stroke-opacity", stroke.Colour)} stroke-width=\"{Number(stroke.Width)}\""
        );
        if (stroke.Round)
        {
            style.Append(" stroke-linecap=\"round\" stroke-linejoin=\"round\"");
        }

        if (stroke.Dashes is { Count: > 0 } dashes)
        {
            style.Append(" stroke-dasharray=\"").AppendJoin(' ', dashes.Select(Number)).Append('"');
        }

        return style.ToString();
    }

    private static string Opacity(string name, Colour colour) =>
        colour.Opacity == 255
            ? string.Empty
            : string.Create(
                CultureInfo.InvariantCulture,
                $" {name}=\"{colour.Opacity / 255.0:0.###}\""
            );

    private static void Append(StringBuilder data, double x, double y) =>
        data.Append(Number(x)).Append(' ').Append(Number(y));

    /// <summary>Text as XML has it; characters that XML has no place for become blanks.</summary>
    private static string Escaped(string text) =>
        SecurityElement.Escape(
            string.Concat(
                text.Select(letter =>
                    XmlConvert.IsXmlChar(letter) || char.IsSurrogate(letter) ? letter : ' '
                )
            )
        );

    private static string Number(double value) =>
        value.ToString("0.##", CultureInfo.InvariantCulture);
}
