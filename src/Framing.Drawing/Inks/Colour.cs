using System.Globalization;

namespace Framing.Drawing;

/// <summary>A colour of the sRGB space with an opacity, eight bits each.</summary>
internal readonly record struct Colour(byte Red, byte Green, byte Blue, byte Opacity = 255)
{
    /// <summary>The relative luminance, 0 to 1, opacity left aside.</summary>
    /// <remarks>WCAG 2.2, "relative luminance".</remarks>
    public double Luminance =>
        (0.2126 * Linear(Red)) + (0.7152 * Linear(Green)) + (0.0722 * Linear(Blue));

    /// <summary>Reads <c>#rrggbb</c>.</summary>
    public static Colour Hex(uint rgb) => new((byte)(rgb >> 16), (byte)(rgb >> 8), (byte)rgb);

    /// <summary>The contrast between two opaque colours, 1 to 21.</summary>
    /// <remarks>WCAG 2.2, "contrast ratio".</remarks>
    public static double Contrast(Colour one, Colour other)
    {
        var (a, b) = (one.Luminance, other.Luminance);
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    /// <summary>The same colour, let through.</summary>
    /// <param name="opacity">0 to 1.</param>
    public Colour At(double opacity) => this with { Opacity = (byte)Math.Round(opacity * 255.0) };

    /// <summary>This colour laid over an opaque one.</summary>
    public Colour Over(Colour ground)
    {
        var part = Opacity / 255.0;
        byte Mixed(byte above, byte below) =>
            (byte)Math.Round((above * part) + (below * (1.0 - part)));
        return new(Mixed(Red, ground.Red), Mixed(Green, ground.Green), Mixed(Blue, ground.Blue));
    }

    /// <summary><c>#rrggbb</c>, without the opacity.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"#{Red:x2}{Green:x2}{Blue:x2}");

    private static double Linear(byte part)
    {
        var value = part / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
    }
}
