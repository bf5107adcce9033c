using Framing.Catalogue;
using Framing.Sky;

namespace Framing.Rehearsal;

/// <summary>Which stars fall onto a frame, where, and how bright: catalogue stars at the frame's date, fainter ones made up.</summary>
internal static class StarField
{
    /// <summary>Stars whose brightest pixel stays below this share of the noise are left away.</summary>
    private const double LeastPeak = 0.12;

    public static List<(StarLight Light, FrameStar Star)> Of(
        FrameRecipe recipe,
        FrameGeometry geometry,
        SkyMesh mesh
    )
    {
        var zero = LightRates.OfMagnitudeZero(recipe);
        var noise = LightRates.NoiseOf(recipe, LightRates.OfSky(recipe));
        var width = CoreWidth(recipe, 0.0);
        var peak = 0.88 / (width * width);
        var faintest = 2.5 * Math.Log10(zero * Math.Min(peak, 1.0) / (LeastPeak * noise));
        var year = TerrestrialTime.FromUtc(recipe.Exposure.Middle).JulianYear;
        var reach = geometry.Reach(recipe);
        var stars = new List<(StarLight, FrameStar)>();
        foreach (
            var star in StarCatalogue.Embedded.InCone(
                recipe.Pose.Centre,
                reach,
                new StarSelection { JulianYear = year, FaintestMagnitude = faintest }
            )
        )
        {
            Add(star.At(year), star.VMagnitude, star.BMinusV ?? 0.65, true);
        }

        if (recipe.Sky.FaintStars && faintest > 10.0)
        {
            foreach (
                var star in new MadeUpSky().InCone(
                    recipe.Pose.Centre,
                    reach,
                    new StarSelection { FaintestMagnitude = faintest }
                )
            )
            {
                Add(star.Direction, star.VMagnitude, star.BMinusV, false);
            }
        }

        stars.Sort((a, b) => b.Item2.Electrons.CompareTo(a.Item2.Electrons));
        return stars;

        void Add(SkyDirection direction, double magnitude, double colour, bool isReal)
        {
            if (!geometry.Coordinates.TrySkyToPixel(direction, out var pixel))
            {
                return;
            }

            const double margin = 40.0;
            var (x, y) = (pixel.X - 1.0, pixel.Y - 1.0);
            if (
                x < -margin
                || y < -margin
                || x > geometry.Width + margin
                || y > geometry.Height + margin
            )
            {
                return;
            }

            var radius = geometry.FieldRadius(x, y);
            var (outX, outY) = geometry.Outwards(x, y);
            var tail = recipe.Lens.ComaPx * radius / recipe.Camera.Binning;
            var electrons =
                zero
                * LightRates.OfMagnitude(magnitude)
                * mesh.ClearAt(x, y)
                * SkyMesh.Shading(recipe.Lens, geometry, x, y);
            stars.Add(
                (
                    new(
                        x,
                        y,
                        electrons,
                        colour,
                        CoreWidth(recipe, radius),
                        outX * tail,
                        outY * tail,
                        electrons * peak < 3.0 * noise
                    ),
                    new(pixel, direction, magnitude, electrons, isReal, false)
                )
            );
        }
    }

    /// <summary>Full width of a star's core at a distance from the lens's axis, pixels of the frame: air, lens, curved field.</summary>
    private static double CoreWidth(FrameRecipe recipe, double fieldRadius)
    {
        var air = recipe.Sky.SeeingArcsec / recipe.Scale.Arcseconds;
        var curved = recipe.Lens.CurvaturePx * fieldRadius * fieldRadius;
        return Math.Sqrt(
                (air * air) + (recipe.Lens.BlurPx * recipe.Lens.BlurPx) + (curved * curved)
            ) / recipe.Camera.Binning;
    }
}
