using Framing.Catalogue;
using Framing.Imaging;
using Framing.Sky;

namespace Framing.DemoFrames;

/// <summary>The catalogue's stars in a picture.</summary>
internal static class StarField
{
    /// <summary>January 2026.</summary>
    private const double JulianYear = 2026.05;

    /// <summary>Paints all stars whose spots reach into the picture.</summary>
    /// <param name="planes">One plane, or red, green and blue.</param>
    /// <param name="width">Columns.</param>
    /// <param name="world">Where the picture lies.</param>
    /// <param name="painter">The shape of a star.</param>
    /// <param name="fluxOfTen">What a star of V 10 adds up to in each plane.</param>
    public static void Paint(
        float[][] planes,
        int width,
        TanWorldCoordinates world,
        StarPainter painter,
        double fluxOfTen
    )
    {
        var height = planes[0].Length / width;
        var centre = world.PixelToSky(new((width + 1) / 2.0, (height + 1) / 2.0));
        var corner = world.PixelToSky(new(-60.0, -60.0));
        foreach (var star in StarCatalogue.Embedded.InCone(centre, centre.SeparationTo(corner)))
        {
            if (!world.TrySkyToPixel(star.At(JulianYear), out var at))
            {
                continue;
            }

            var flux = fluxOfTen * Math.Pow(10.0, -0.4 * (star.VMagnitude - 10.0));
            for (var plane = 0; plane < planes.Length; plane++)
            {
                // Red stars (large B-V) are weaker in blue and stronger in red; 0.6 is about white.
                var tint =
                    planes.Length == 1 ? 0.0 : (1 - plane) * 0.35 * ((star.BMinusV ?? 0.6) - 0.6);
                painter.Add(planes[plane], width, at, flux * Math.Pow(10.0, 0.4 * tint));
            }
        }
    }
}
