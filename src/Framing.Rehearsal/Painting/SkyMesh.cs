using Framing.Sky;

namespace Framing.Rehearsal;

/// <summary>The sky without its stars at nodes some pixels apart: electrons a pixel, and what clouds let through.</summary>
internal sealed class SkyMesh
{
    private const int StepPx = 6;

    private readonly int columns;
    private readonly int rows;
    private readonly float[] light;
    private readonly float[] clear;

    public SkyMesh(FrameRecipe recipe, FrameGeometry geometry)
    {
        columns = ((geometry.Width + StepPx - 1) / StepPx) + 1;
        rows = ((geometry.Height + StepPx - 1) / StepPx) + 1;
        light = new float[columns * rows];
        clear = new float[columns * rows];
        var sky = LightRates.OfSky(recipe);
        var pixel = recipe.Scale.Radians * recipe.Camera.Binning;
        Parallel.For(
            0,
            rows,
            row =>
            {
                for (var column = 0; column < columns; column++)
                {
                    var (x, y) = (column * StepPx, row * StepPx);
                    var open = 1.0 - Cloud(recipe, geometry, x, y);
                    var glow =
                        1.0
                        + Slope(recipe.Sky, geometry, x, y)
                        + (open * Nebulae(recipe.Sky, geometry, pixel, x, y))
                        + (0.8 * (1.0 - open));
                    var at = (row * columns) + column;
                    clear[at] = (float)open;
                    light[at] = (float)(
                        sky * Math.Max(glow, 0.05) * Shading(recipe.Lens, geometry, x, y)
                    );
                }
            }
        );
    }

    /// <summary>What the corners leave of the light.</summary>
    public static double Shading(LensModel lens, FrameGeometry geometry, double column, double row)
    {
        var radius = geometry.FieldRadius(column, row);
        return Math.Max(0.0, 1.0 - (lens.Vignetting * radius * radius));
    }

    /// <summary>What clouds let through at a pixel counted from 0.</summary>
    public double ClearAt(double column, double row)
    {
        var (i, u) = Place(column, columns);
        var (j, v) = Place(row, rows);
        return double.Lerp(
            double.Lerp(clear[(j * columns) + i], clear[(j * columns) + i + 1], u),
            double.Lerp(clear[((j + 1) * columns) + i], clear[((j + 1) * columns) + i + 1], u),
            v
        );
    }

    /// <summary>The electrons of a row.</summary>
    public void FillRow(int row, Span<float> electrons)
    {
        var (j, v) = Place(row, rows);
        for (var i = 0; i + 1 < columns; i++)
        {
            var here = double.Lerp(light[(j * columns) + i], light[((j + 1) * columns) + i], v);
            var next = double.Lerp(
                light[(j * columns) + i + 1],
                light[((j + 1) * columns) + i + 1],
                v
            );
            var from = i * StepPx;
            for (var x = from; x < Math.Min(from + StepPx, electrons.Length); x++)
            {
                electrons[x] = (float)(here + ((next - here) * (x - from) / StepPx));
            }
        }
    }

    private static (int Node, double Part) Place(double pixel, int nodes)
    {
        var node = Math.Clamp((int)(pixel / StepPx), 0, nodes - 2);
        return (node, Math.Clamp((pixel / StepPx) - node, 0.0, 1.0));
    }

    private static double Slope(SkyModel sky, FrameGeometry geometry, int x, int y)
    {
        var (sin, cos) = Math.SinCos(sky.GradientDirection.Radians);
        var half = Math.Max(geometry.Width, geometry.Height) / 2.0;
        return sky.Gradient
            * (((x - (geometry.Width / 2.0)) * cos) + ((y - (geometry.Height / 2.0)) * sin))
            / half;
    }

    private static double Cloud(FrameRecipe recipe, FrameGeometry geometry, int x, int y)
    {
        if (recipe.Sky.Clouds <= 0.0)
        {
            return 0.0;
        }

        var size = (double)Math.Max(geometry.Width, geometry.Height);
        var noise = Texture.At(new(x / size, y / size, 0.0), 0.45, 5, recipe.Seed + 77);
        return recipe.Sky.Clouds * Math.Clamp(0.5 + (0.9 * noise), 0.0, 1.0);
    }

    /// <summary>The light of nebulae over that of the empty sky.</summary>
    private static double Nebulae(SkyModel sky, FrameGeometry geometry, double pixel, int x, int y)
    {
        if (
            sky.Nebulae.Count == 0
            || !geometry.Coordinates.TryPixelToSky(new(x + 1.0, y + 1.0), out var direction)
        )
        {
            return 0.0;
        }

        var sum = 0.0;
        foreach (var nebula in sky.Nebulae)
        {
            var far = direction.SeparationTo(nebula.Centre) / nebula.Radius;
            if (far < 2.2)
            {
                sum += nebula.Strength * Glow(direction.Vector, nebula.Radius.Radians, far, pixel);
            }
        }

        return sum;
    }

    /// <summary>Haze, threads where noise changes its sign, and dust that takes some of both away.</summary>
    private static double Glow(Vector3D place, double radius, double far, double pixel)
    {
        var octaves = Math.Clamp((int)Math.Log2(radius / (6.0 * pixel)), 1, 7);
        var bend = new Vector3D(
            Texture.At(place, 0.8 * radius, 2, 11),
            Texture.At(place, 0.8 * radius, 2, 12),
            Texture.At(place, 0.8 * radius, 2, 13)
        );
        var bent = place + (bend * (0.25 * radius));
        var haze = Texture.At(bent, 0.9 * radius, octaves, 21);
        var thread = 1.0 - Math.Abs(Texture.At(bent, 0.55 * radius, octaves, 31));
        var dust = Math.Max(0.0, Texture.At(bent, 0.5 * radius, octaves, 41) - 0.1);
        var shape = Math.Exp(-1.1 * far * far) * (1.0 - Math.Pow(far / 2.2, 4.0));
        return shape
            * Math.Max(0.0, 0.35 + (0.45 * haze) + (0.9 * Math.Pow(Math.Max(thread, 0.0), 6.0)))
            * Math.Exp(-3.0 * dust);
    }
}
