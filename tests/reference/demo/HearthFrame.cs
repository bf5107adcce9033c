using Framing.Fits;
using Framing.Imaging;
using Framing.Sky;

namespace Framing.DemoFrames;

/// <summary>The wide frame of the two-panel target: grey, 16 bits, through a red filter, as it comes from the camera.</summary>
internal static class HearthFrame
{
    private const int Width = 1036;
    private const int Height = 705;
    private const double FocalLength = 135.0;
    private const double Pixel = 4.63;
    private const int Binning = 4;

    // Middles and sizes roughly as in the catalogue, so that outlines drawn over the picture find something to hold.
    private static readonly Cloud[] Clouds =
    [
        new(
            SkyDirection.FromDegrees(38.48, 61.34),
            Angle.FromArcminutes(140),
            Angle.FromArcminutes(118),
            PositionAngle.FromDegrees(60),
            0.75
        ),
        new(
            SkyDirection.FromDegrees(43.83, 60.45),
            Angle.FromArcminutes(120),
            Angle.FromArcminutes(66),
            PositionAngle.FromDegrees(70),
            0.55
        ),
        new(
            SkyDirection.FromDegrees(34.6, 62.8),
            Angle.FromArcminutes(85),
            Angle.FromArcminutes(70),
            PositionAngle.FromDegrees(10),
            0.95
        ),
        new(
            SkyDirection.FromDegrees(36.7, 62.05),
            Angle.FromArcminutes(22),
            Angle.FromArcminutes(16),
            PositionAngle.FromDegrees(120),
            0.0
        ),
    ];

    private static readonly double[] Strength = [1.0, 0.9, 0.3, 1.3];

    public static void Write(string folder)
    {
        var scale = Angle.FromRadians(Pixel * Binning / (1000.0 * FocalLength));
        var world = new TanWorldCoordinates(
            new((Width + 1) / 2.0, (Height + 1) / 2.0),
            SkyDirection.FromDegrees(39.6, 61.3),
            PixelMatrix.FromPositionAngle(PositionAngle.FromDegrees(8.5), scale, mirrored: false)
        );
        var plane = new float[Width * Height];
        var texture = new CloudTexture(world.ReferenceDirection, 41);
        for (var i = 0; i < plane.Length; i++)
        {
            plane[i] = (float)Glow(texture, world, (i % Width) + 1, (i / Width) + 1);
        }

        StarField.Paint([plane], Width, world, new StarPainter(2.1), 9000.0);
        var noise = new Noise(7);
        var samples = Array.ConvertAll(
            plane,
            level => (ushort)Math.Clamp(Math.Round(noise.Of(level, 0.8, 12.0)), 0.0, 65535.0)
        );
        FitsWriter.WriteImage<ushort>(
            Path.Combine(folder, "hearth-wide.fits"),
            Width,
            Height,
            1,
            samples,
            Cards(world)
        );
    }

    /// <summary>The sky without its stars: offset, glow from below, darker corners, clouds.</summary>
    private static double Glow(CloudTexture texture, TanWorldCoordinates world, int x, int y)
    {
        var place = world.PixelToSky(new(x, y));
        var (east, north) = texture.Place(place);
        var cloud = 0.0;
        for (var i = 0; i < Clouds.Length; i++)
        {
            cloud += Strength[i] * Clouds[i].At(place);
        }

        var haze = 0.5 + (0.5 * texture.Clouds(east, north, 1.6, 6));
        var threads = texture.Threads(east, north, 0.7, 5);
        var dust = Math.Max(0.0, texture.Clouds(east - 31.0, north + 12.0, 0.9, 6) - 0.12);
        var nebula =
            ((cloud * (0.25 + (0.75 * haze) + (0.9 * threads))) + (0.06 * haze))
            * Math.Exp(-2.2 * dust);
        var (dx, dy) = ((x - (Width / 2.0)) / Width, (y - (Height / 2.0)) / Width);
        var shading = 1.0 - (0.35 * ((dx * dx) + (dy * dy)));
        return 480.0 + (shading * (900.0 + (120.0 * dx) - (160.0 * dy) + (900.0 * nebula)));
    }

    private static FitsHeaderBuilder Cards(TanWorldCoordinates world) =>
        new FitsHeaderBuilder()
            .Add("OBJECT", "the hearth")
            .Add("IMAGETYP", "light")
            .Add("DATE-OBS", "2026-01-17T19:42:10.500", "UTC")
            .Add("EXPTIME", 180.0, "seconds")
            .Add("FILTER", "H-alpha")
            .Add("FOCALLEN", FocalLength, "mm")
            .Add("XPIXSZ", Pixel * Binning, "micrometres, binning counted in")
            .Add("YPIXSZ", Pixel * Binning)
            .Add("XBINNING", (long)Binning)
            .Add("YBINNING", (long)Binning)
            .AddSolution(world)
            .AddComment("Made for demonstration: stars from the catalogue of the program,")
            .AddComment("sky glow, noise and nebulae invented.");
}
