using System.Buffers.Binary;
using Framing.Catalogue;
using Framing.Fits;
using Framing.Sky;

namespace Framing.Cli.Tests;

/// <summary>
/// Paints what a camera would see of a field: bells of light on a noisy sky. Its projection is its own plain trigonometry;
/// it shares nothing with what finds and matches stars.
/// </summary>
internal sealed class PaintedFrame
{
    private const double Degree = Math.PI / 180.0;
    private const double Level = 800.0;
    private const double Noise = 12.0;
    private const double StarWidth = 1.3;

    private readonly Random random = new(20261125);
    private readonly float[] samples;

    public PaintedFrame(int width = 1200, int height = 800, double noise = Noise)
    {
        (Width, Height) = (width, height);
        samples = new float[width * height];
        for (var i = 0; i < samples.Length; i++)
        {
            samples[i] = (float)(Level + (noise * Normal()));
        }
    }

    public int Width { get; }

    public int Height { get; }

    /// <summary>Where its middle points.</summary>
    public SkyDirection Centre { get; init; } = SkyDirection.FromDegrees(38.2, 61.5);

    public double ArcsecondsPerPixel { get; init; } = 20.0;

    /// <summary>Position angle of +y of the file.</summary>
    public double UpDegrees { get; init; } = 137.0;

    public bool Mirrored { get; init; }

    /// <summary>1 in focus; larger for stars as discs so many times as wide.</summary>
    public double Blur { get; init; } = 1.0;

    /// <summary>The catalogue's stars down to a magnitude, at 2026.9.</summary>
    public PaintedFrame WithCatalogueStars(double faintest = 10.5)
    {
        var half = 0.51 * double.Hypot(Width, Height) * ArcsecondsPerPixel;
        foreach (
            var star in StarCatalogue.Embedded.InCone(
                Centre,
                Angle.FromArcseconds(half),
                new() { JulianYear = 2026.9, FaintestMagnitude = faintest }
            )
        )
        {
            Star(star.At(2026.9), star.VMagnitude);
        }

        return this;
    }

    /// <summary>A star; one of V 10 stands about five times above the noise.</summary>
    public void Star(SkyDirection place, double magnitude)
    {
        var (x, y) = Place(place);
        if (double.IsNaN(x))
        {
            return;
        }

        var flux = 640.0 * Math.Pow(10.0, 0.4 * (10.0 - magnitude)) * Blur;
        Spot(x, y, flux);
    }

    /// <summary>Anything else: a function of column and row, both from 0.</summary>
    public PaintedFrame Add(Func<int, int, double> light)
    {
        for (var j = 0; j < Height; j++)
        {
            for (var i = 0; i < Width; i++)
            {
                samples[(j * Width) + i] += (float)light(i, j);
            }
        }

        return this;
    }

    /// <summary>Where a direction is seen, as FITS counts; NaN outside.</summary>
    public (double X, double Y) Place(SkyDirection place)
    {
        var difference = place.RightAscension.Radians - Centre.RightAscension.Radians;
        var (sinDec, cosDec) = Math.SinCos(place.Declination.Radians);
        var (sin0, cos0) = Math.SinCos(Centre.Declination.Radians);
        var cosine = (sin0 * sinDec) + (cos0 * cosDec * Math.Cos(difference));
        var xi = cosDec * Math.Sin(difference) / cosine;
        var eta = ((cos0 * sinDec) - (sin0 * cosDec * Math.Cos(difference))) / cosine;
        var (sinUp, cosUp) = Math.SinCos(UpDegrees * Degree);
        var along = (xi * sinUp) + (eta * cosUp);
        var across = (eta * sinUp) - (xi * cosUp);
        var perRadian = 3600.0 / Degree / ArcsecondsPerPixel;
        var x = (0.5 * (Width + 1)) + ((Mirrored ? -across : across) * perRadian);
        var y = (0.5 * (Height + 1)) + (along * perRadian);
        return x > 0.5 && x < Width + 0.5 && y > 0.5 && y < Height + 0.5
            ? (x, y)
            : (double.NaN, double.NaN);
    }

    public string WriteFits(string path, params (string Keyword, double Value)[] numbers)
    {
        var cards = new FitsHeaderBuilder()
            .Add("DATE-OBS", "2026-11-24T22:00:00")
            .Add("EXPTIME", 60L);
        foreach (var (keyword, value) in numbers)
        {
            cards.Add(keyword, value);
        }

        FitsWriter.WriteImage<ushort>(path, Width, Height, 1, Samples(), cards);
        return path;
    }

    /// <summary>A plain TIFF of 16 bits, the row shown on top first.</summary>
    public string WriteTiff(string path)
    {
        var row = 2 * Width;
        var data = new byte[8 + (row * Height)];
        "II*\0"u8.CopyTo(data);
        BinaryPrimitives.WriteInt32LittleEndian(data.AsSpan(4), data.Length);
        var whole = Samples();
        for (var i = 0; i < whole.Length; i++)
        {
            var at = 8 + (row * (Height - 1 - (i / Width))) + (2 * (i % Width));
            BinaryPrimitives.WriteUInt16LittleEndian(data.AsSpan(at), whole[i]);
        }

        (int Tag, int Type, int Value)[] entries =
        [
            (256, 4, Width),
            (257, 4, Height),
            (258, 3, 16),
            (259, 3, 1),
            (262, 3, 1),
            (273, 4, 8),
            (277, 3, 1),
            (278, 4, Height),
            (279, 4, row * Height),
        ];
        var directory = new byte[2 + (12 * entries.Length) + 4];
        BinaryPrimitives.WriteInt16LittleEndian(directory, (short)entries.Length);
        for (var i = 0; i < entries.Length; i++)
        {
            var entry = directory.AsSpan(2 + (12 * i));
            BinaryPrimitives.WriteInt16LittleEndian(entry, (short)entries[i].Tag);
            BinaryPrimitives.WriteInt16LittleEndian(entry[2..], (short)entries[i].Type);
            BinaryPrimitives.WriteInt32LittleEndian(entry[4..], 1);
            BinaryPrimitives.WriteInt32LittleEndian(entry[8..], entries[i].Value);
        }

        File.WriteAllBytes(path, [.. data, .. directory]);
        return path;
    }

    private ushort[] Samples() =>
        Array.ConvertAll(samples, v => (ushort)Math.Clamp(MathF.Round(v), 0f, 65535f));

    private void Spot(double x, double y, double flux)
    {
        var width = StarWidth * Blur;
        var reach = (int)(6.0 * width) + 2;
        for (var j = Math.Max(0, (int)y - reach); j < Math.Min(Height, (int)y + reach); j++)
        {
            for (var i = Math.Max(0, (int)x - reach); i < Math.Min(Width, (int)x + reach); i++)
            {
                var square =
                    ((i + 1 - x) * (i + 1 - x) / (width * width))
                    + ((j + 1 - y) * (j + 1 - y) / (width * width));

                // In focus a bell; out of focus a disc with a soft edge.
                var shape =
                    Blur > 1.0
                        ? 0.5 / (1.0 + Math.Exp(8.0 * (Math.Sqrt(square) - 2.0)))
                        : Math.Exp(-0.5 * square);
                samples[(j * Width) + i] += (float)(flux * shape / (2.0 * Math.PI * width * width));
            }
        }
    }

    private double Normal() =>
        Math.Sqrt(-2.0 * Math.Log(1.0 - random.NextDouble()))
        * Math.Cos(2.0 * Math.PI * random.NextDouble());
}
