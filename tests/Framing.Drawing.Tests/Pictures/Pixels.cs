using SkiaSharp;

namespace Framing.Drawing.Tests;

/// <summary>A PNG file read back as pixels.</summary>
internal sealed class Pixels
{
    private readonly SKColor[] colours;

    public Pixels(byte[] png)
    {
        using var bitmap = SKBitmap.Decode(png);
        Width = bitmap.Width;
        Height = bitmap.Height;
        colours = bitmap.Pixels;
    }

    public int Width { get; }

    public int Height { get; }

    public IReadOnlyList<SKColor> All => colours;

    public SKColor this[int column, int row] => colours[(row * Width) + column];

    /// <summary>Brightness above a ground: the sum of the three colours less that of the ground.</summary>
    public double Above(int column, int row, SKColor ground)
    {
        var colour = this[column, row];
        return Math.Max(
            0.0,
            colour.Red + colour.Green + colour.Blue - ground.Red - ground.Green - ground.Blue
        );
    }
}
