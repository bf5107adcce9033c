namespace Framing.Rehearsal;

/// <summary>Satellites that cross the frame: straight lines, some of them flashing.</summary>
internal sealed class SatelliteLines
{
    private readonly List<Line> lines = [];
    private readonly double sigma;

    public SatelliteLines(FrameRecipe recipe, FrameGeometry geometry, double width, double noise)
    {
        sigma = width / 2.3548;
        var random = new RandomStream(recipe.Seed, 0x5A7E);
        for (var i = 0; i < recipe.Sky.Satellites; i++)
        {
            lines.Add(
                new(
                    random.Between(0.1, 0.9) * geometry.Width,
                    random.Between(0.1, 0.9) * geometry.Height,
                    random.Between(0.0, Math.PI),
                    noise * Math.Pow(10.0, random.Between(0.4, 1.9)),
                    random.Share() < 0.3 ? 0.7 : 0.0,
                    random.Between(40.0, 200.0)
                )
            );
        }
    }

    /// <summary>Adds them to a row.</summary>
    public void AddTo(int row, Span<float> electrons)
    {
        foreach (var line in lines)
        {
            var (sin, cos) = Math.SinCos(line.Direction);
            var reach = 5.0 * sigma;

            // Along a row the line is wider the flatter it runs.
            var middle = line.X + ((row - line.Y) * cos / Math.Max(sin, 1e-6));
            var half = reach / Math.Max(sin, 1e-6);
            var from = (int)Math.Clamp(middle - half, 0.0, electrons.Length);
            var to = (int)Math.Clamp(middle + half + 1.0, 0.0, electrons.Length);
            for (var x = from; x < to; x++)
            {
                var across = ((row - line.Y) * cos) - ((x - line.X) * sin);
                var along = ((x - line.X) * cos) + ((row - line.Y) * sin);
                electrons[x] += (float)(
                    line.Peak
                    * Math.Exp(-0.5 * across * across / (sigma * sigma))
                    * (1.0 + (line.Flash * Math.Sin(along / line.Period)))
                );
            }
        }
    }

    private readonly record struct Line(
        double X,
        double Y,
        double Direction,
        double Peak,
        double Flash,
        double Period
    );
}
