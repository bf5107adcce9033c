using System.Globalization;

namespace Framing.Sky;

/// <summary>The sensor of a camera: how many pixels, and how large one is.</summary>
public sealed record Sensor
{
    /// <summary>The most pixels that one axis may have.</summary>
    public const int MostPixels = 100_000;

    /// <summary>Makes a sensor.</summary>
    /// <param name="widthPx">Columns, unbinned, 1 to 100,000.</param>
    /// <param name="heightPx">Rows, unbinned, 1 to 100,000.</param>
    /// <param name="pixelMicrometres">Edge of one unbinned square pixel in µm, more than 0 and at most 1000.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public Sensor(int widthPx, int heightPx, double pixelMicrometres)
    {
        WidthPx = InRange(widthPx, nameof(widthPx));
        HeightPx = InRange(heightPx, nameof(heightPx));
        PixelMicrometres = pixelMicrometres is > 0.0 and <= 1000.0
            ? pixelMicrometres
            : throw new ArgumentOutOfRangeException(
                nameof(pixelMicrometres),
                pixelMicrometres,
                "A pixel is more than 0 and at most 1000 micrometres wide."
            );
    }

    /// <summary>Columns, unbinned.</summary>
    public int WidthPx { get; }

    /// <summary>Rows, unbinned.</summary>
    public int HeightPx { get; }

    /// <summary>Edge of one unbinned square pixel in µm.</summary>
    public double PixelMicrometres { get; }

    /// <summary>Width of the sensor in mm.</summary>
    public double WidthMillimetres => WidthPx * PixelMicrometres / 1000.0;

    /// <summary>Height of the sensor in mm.</summary>
    public double HeightMillimetres => HeightPx * PixelMicrometres / 1000.0;

    private static int InRange(int pixels, string name) =>
        pixels is >= 1 and <= MostPixels
            ? pixels
            : throw new ArgumentOutOfRangeException(
                name,
                pixels,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"A sensor has 1 to {MostPixels} pixels along each axis."
                )
            );
}
