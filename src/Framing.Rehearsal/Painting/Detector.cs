namespace Framing.Rehearsal;

/// <summary>Turns electrons into the numbers of a file: counting noise, darkness, hot pixels, dust, reading, full wells.</summary>
internal sealed class Detector
{
    private readonly FrameRecipe recipe;
    private readonly int width;
    private readonly double joined;
    private readonly double readNoise;
    private readonly double dark;
    private readonly List<Grain> dust = [];

    public Detector(FrameRecipe recipe, FrameGeometry geometry)
    {
        this.recipe = recipe;
        var camera = recipe.Camera;
        width = geometry.Width;
        joined = (double)camera.Binning * camera.Binning;
        readNoise = camera.ReadNoiseElectrons * camera.Binning;
        dark =
            recipe.Kind == FrameKind.Bias
                ? 0.0
                : joined * camera.DarkCurrent * recipe.Exposure.Seconds;
        var random = new RandomStream(camera.SerialNumber, 0xD057);
        for (var i = 0; i < 5; i++)
        {
            dust.Add(
                new(
                    random.Share() * geometry.Width,
                    random.Share() * geometry.Height,
                    random.Between(12.0, 36.0) / camera.Binning,
                    random.Between(0.01, 0.05)
                )
            );
        }
    }

    /// <summary>Reads a row out.</summary>
    /// <param name="row">The row, from 0.</param>
    /// <param name="light">Mean electrons of light; dust is taken away here.</param>
    /// <param name="numbers">Takes the numbers.</param>
    public void Read(int row, Span<float> light, Span<ushort> numbers)
    {
        var camera = recipe.Camera;
        Shade(row, light);
        var random = new RandomStream(recipe.Seed, (ulong)row + 1000);
        var hot = HotPixels(row);
        var next = 0;
        var well = camera.FullWellElectrons * joined;
        for (var x = 0; x < width; x++)
        {
            var mean = light[x] + dark;
            if (next < hot.Count && hot[next].Column == x)
            {
                mean += hot[next++].Electrons;
            }

            var electrons = random.Counted(mean, readNoise, well);
            var number = camera.BiasLevel + (electrons / (camera.ElectronsPerStep * joined));
            numbers[x] = (ushort)Math.Clamp(Math.Round(number), 0.0, 65535.0);
        }
    }

    private void Shade(int row, Span<float> light)
    {
        foreach (var grain in dust)
        {
            var dy = row - grain.Y;
            var half = grain.Radius * grain.Radius - (dy * dy);
            if (half <= 0.0)
            {
                continue;
            }

            var reach = Math.Sqrt(half);
            var from = (int)Math.Clamp(grain.X - reach, 0.0, width);
            var to = (int)Math.Clamp(grain.X + reach, 0.0, width);
            for (var x = from; x < to; x++)
            {
                // The shadow of a grain is a ring: the lens's own light fills its middle.
                var r = double.Hypot(x - grain.X, dy) / grain.Radius;
                var edge =
                    Math.Clamp((1.0 - r) * 6.0, 0.0, 1.0) * Math.Clamp((r - 0.3) * 6.0, 0.0, 1.0);
                light[x] *= (float)(1.0 - (grain.Depth * edge));
            }
        }
    }

    private List<(int Column, double Electrons)> HotPixels(int row)
    {
        var found = new List<(int Column, double Electrons)>();
        if (recipe.Kind == FrameKind.Bias)
        {
            return found;
        }

        var random = new RandomStream(recipe.Camera.SerialNumber, (ulong)row + 50_000);
        var count = (int)random.Count(recipe.Camera.HotShare * width);
        for (var i = 0; i < count; i++)
        {
            var column = (int)(random.Share() * width);
            var rate = Math.Pow(10.0, random.Between(1.2, 3.6));
            found.Add((column, rate * Math.Sqrt(recipe.Exposure.Seconds)));
        }

        found.Sort((a, b) => a.Column.CompareTo(b.Column));
        for (var i = found.Count - 1; i > 0; i--)
        {
            if (found[i].Column == found[i - 1].Column)
            {
                found.RemoveAt(i);
            }
        }

        return found;
    }

    private readonly record struct Grain(double X, double Y, double Radius, double Depth);
}
