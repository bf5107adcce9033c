using Framing.Fits;
using Framing.Imaging;
using Framing.Sky;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Png;
using SixLabors.ImageSharp.PixelFormats;

namespace Framing.DemoFrames;

/// <summary>A picture in colour as it comes from processing: a PNG of three times 16 bits, its solution in a text beside it.</summary>
internal static class ShorePicture
{
    private const int Width = 720;
    private const int Height = 480;

    private static readonly Cloud Shore = new(
        SkyDirection.FromDegrees(60.2, 36.45),
        Angle.FromArcminutes(175),
        Angle.FromArcminutes(52),
        PositionAngle.FromDegrees(110),
        0.15
    );

    public static void Write(string folder)
    {
        var world = new TanWorldCoordinates(
            new(351.25, 244.5),
            SkyDirection.FromDegrees(60.0, 36.6),
            PixelMatrix.FromPositionAngle(
                PositionAngle.FromDegrees(203.0),
                Angle.FromArcseconds(30.0),
                mirrored: false
            )
        );
        var planes = Array.ConvertAll(new int[3], _ => new float[Width * Height]);
        var texture = new CloudTexture(world.ReferenceDirection, 97);
        for (var i = 0; i < Width * Height; i++)
        {
            var (red, green, blue) = Glow(
                texture,
                world.PixelToSky(new((i % Width) + 1, (i / Width) + 1))
            );
            planes[0][i] = (float)red;
            planes[1][i] = (float)green;
            planes[2][i] = (float)blue;
        }

        StarField.Paint(planes, Width, world, new StarPainter(2.0), 30000.0);
        WholeFile.Write(Path.Combine(folder, "shore.png"), stream => Encode(planes, stream));
        var cards = new FitsHeaderBuilder()
            .AddComment("Where shore.png lies on the sky. Pixels as FITS counts them:")
            .AddComment("x = column + 1 from the left, y = 1 in the bottom row.")
            .Add("IMAGEW", (long)Width, "columns of the picture")
            .Add("IMAGEH", (long)Height, "rows of the picture")
            .AddSolution(world);
        WholeFile.Write(
            Path.Combine(folder, "shore.wcs.txt"),
            stream => stream.Write(System.Text.Encoding.ASCII.GetBytes(cards.ToText()))
        );
    }

    /// <summary>Linear light of the sky without its stars.</summary>
    private static (double Red, double Green, double Blue) Glow(
        CloudTexture texture,
        SkyDirection place
    )
    {
        var (east, north) = texture.Place(place);
        var haze = 0.5 + (0.5 * texture.Clouds(east, north, 1.1, 6));
        var threads = texture.Threads(east, north, 0.55, 5);
        var dust = Math.Max(0.0, texture.Clouds(east + 9.0, north - 14.0, 1.3, 6) - 0.05);
        var red =
            ((Shore.At(place) * (0.2 + (0.8 * haze) + (1.1 * threads))) + (0.04 * haze))
            * Math.Exp(-1.5 * dust);
        var sky = 300.0 * Math.Exp(-0.3 * dust);
        return (
            (1.02 * sky) + (5200.0 * red),
            (0.99 * sky) + (950.0 * red),
            (1.06 * sky) + (1350.0 * red)
        );
    }

    private static void Encode(float[][] planes, Stream stream)
    {
        // Lifted for the eye as a person would have done it; noise on top, in steps of a 12-bit camera.
        var noise = new Noise(11);
        using var image = new Image<Rgb48>(Width, Height);
        image.ProcessPixelRows(rows =>
        {
            for (var row = 0; row < Height; row++)
            {
                var pixels = rows.GetRowSpan(row);
                for (var column = 0; column < Width; column++)
                {
                    var from = ((Height - 1 - row) * Width) + column;
                    pixels[column] = new(
                        Lifted(planes[0][from], noise),
                        Lifted(planes[1][from], noise),
                        Lifted(planes[2][from], noise)
                    );
                }
            }
        });
        image.Save(
            stream,
            new PngEncoder
            {
                BitDepth = PngBitDepth.Bit16,
                ColorType = PngColorType.Rgb,
                CompressionLevel = PngCompressionLevel.BestCompression,
                FilterMethod = PngFilterMethod.Adaptive,
                ChunkFilter = PngChunkFilter.ExcludeAll,
            }
        );
    }

    private static ushort Lifted(double linear, Noise noise)
    {
        var share = Math.Clamp((noise.Of(linear, 0.25, 3.0) - 180.0) / 30000.0, 0.0, 1.0);
        return (ushort)(Math.Round(4095.0 * Math.Asinh(60.0 * share) / Math.Asinh(60.0)) * 16.0);
    }
}
