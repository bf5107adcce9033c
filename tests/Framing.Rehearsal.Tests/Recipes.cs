using Framing.Sky;

namespace Framing.Rehearsal.Tests;

/// <summary>Recipes that tests start from.</summary>
internal static class Recipes
{
    public static readonly DateTime Evening = new(2026, 12, 5, 21, 0, 0, DateTimeKind.Utc);

    /// <summary>A small grey camera behind a lens of 250 mm, in the Milky Way of Cassiopeia.</summary>
    public static FrameRecipe Small(int width = 900, int height = 700) =>
        new()
        {
            Pose = new(SkyDirection.FromDegrees(39.6, 61.2), PositionAngle.FromDegrees(21.0)),
            Camera = new() { Sensor = new(width, height, 4.63) },
            Lens = new() { FocalLengthMillimetres = 250.0, ApertureMillimetres = 51.0 },
            Exposure = new() { Start = Evening, Seconds = 10.0 },
        };

    /// <summary>One that looks at nothing but an even sky: no stars, no gradient, no vignetting, no hot pixels.</summary>
    public static FrameRecipe Bare(int width = 600, int height = 500)
    {
        var small = Small(width, height);
        return small with
        {
            Camera = small.Camera with { HotShare = 0.0 },
            Lens = small.Lens with { Vignetting = 0.0 },
            Sky = small.Sky with { Gradient = 0.0, FaintStars = false },
        };
    }

    public static RehearsedFrame Make(FrameRecipe recipe) =>
        FrameMaker.Make(recipe, TestContext.Current.CancellationToken);

    /// <summary>The middle of the light in a square about a place, the median of its border taken away; as FITS counts.</summary>
    public static (double X, double Y) Middle(RehearsedFrame frame, double x, double y, int reach)
    {
        var (cx, cy) = ((int)Math.Round(x) - 1, (int)Math.Round(y) - 1);
        var border = new List<double>();
        for (var i = -reach; i <= reach; i++)
        {
            border.Add(At(frame, cx + i, cy - reach));
            border.Add(At(frame, cx + i, cy + reach));
            border.Add(At(frame, cx - reach, cy + i));
            border.Add(At(frame, cx + reach, cy + i));
        }

        border.Sort();
        var level = border[border.Count / 2];
        double sum = 0.0,
            sumX = 0.0,
            sumY = 0.0;
        for (var j = -reach; j <= reach; j++)
        {
            for (var i = -reach; i <= reach; i++)
            {
                var light = At(frame, cx + i, cy + j) - level;
                sum += light;
                sumX += light * i;
                sumY += light * j;
            }
        }

        return (cx + 1 + (sumX / sum), cy + 1 + (sumY / sum));
    }

    public static double At(RehearsedFrame frame, int column, int row) =>
        frame.Samples[(row * frame.Width) + column];

    public static (double Mean, double Sigma) Statistics(IEnumerable<double> values)
    {
        var list = values.ToList();
        var mean = list.Average();
        return (mean, Math.Sqrt(list.Average(v => (v - mean) * (v - mean))));
    }
}
