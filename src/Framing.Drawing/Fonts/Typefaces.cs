using System.Reflection;
using SkiaSharp;

namespace Framing.Drawing;

/// <summary>The one typeface that pictures use, carried with the program: never a font of the machine.</summary>
internal static class Typefaces
{
    /// <summary>Height of a capital letter as a part of the text size (Inter: 2048 of 2816 units).</summary>
    public const double CapHeight = 0.727;

    /// <summary>How far letters reach below the base line, as a part of the text size.</summary>
    public const double Descent = 0.21;

    private static readonly Lazy<SKTypeface> Regular = new(() => Load("Inter-Regular.ttf"));
    private static readonly Lazy<SKTypeface> Medium = new(() => Load("Inter-Medium.ttf"));
    private static readonly Lazy<SKTypeface> SemiBold = new(() => Load("Inter-SemiBold.ttf"));
    private static readonly Lock Measuring = new();
    private static readonly SKFont?[] MeasuringFonts = new SKFont?[3];

    public static SKTypeface Of(TextWeight weight) =>
        weight switch
        {
            TextWeight.SemiBold => SemiBold.Value,
            TextWeight.Medium => Medium.Value,
            _ => Regular.Value,
        };

    /// <summary>A font that draws the same everywhere: no hinting, places between pixels, grey edges.</summary>
    public static SKFont Font(TextWeight weight, double size) =>
        new(Of(weight), (float)size)
        {
            Subpixel = true,
            LinearMetrics = true,
            Hinting = SKFontHinting.None,
            Edging = SKFontEdging.Antialias,
        };

    /// <summary>The width of a text in pixels.</summary>
    public static double Measure(string text, TextWeight weight, double size)
    {
        // Unhinted widths grow with the size: measured at 100 pixels with one font.
        lock (Measuring)
        {
            var font = MeasuringFonts[(int)weight] ??= Font(weight, 100.0);
            return font.MeasureText(text) * size / 100.0;
        }
    }

    private static unsafe SKTypeface Load(string name)
    {
        // An embedded resource stays mapped for the life of the assembly: the font is read where it stands, not copied.
        var stream =
            Assembly.GetExecutingAssembly().GetManifestResourceStream(name) as UnmanagedMemoryStream
            ?? throw new InvalidOperationException(
                $"The typeface {name} is not embedded in the program."
            );
        var data = SKData.Create((IntPtr)stream.PositionPointer, (int)stream.Length);
        return SKTypeface.FromData(data)
            ?? throw new InvalidOperationException(
                $"The embedded typeface {name} could not be read."
            );
    }
}
