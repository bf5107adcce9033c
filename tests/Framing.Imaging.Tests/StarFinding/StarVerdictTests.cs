using Framing.Fits;

namespace Framing.Imaging.Tests.StarFinding;

public sealed class StarVerdictTests
{
    [Fact]
    public void Verdict_BiasOfAFewCounts_Even() =>
        Assert.Equal(StarVerdict.Even, Of(new DrawnSky(1000, 700, 500.0, 1.1, 1).Picture()));

    [Fact]
    public void Verdict_AllTheSameNumber_Even() =>
        Assert.Equal(StarVerdict.Even, Of(new Picture(300, 200, new float[60_000])));

    [Fact]
    public void Verdict_NothingDefined_Even()
    {
        var nothing = new float[300 * 200];
        Array.Fill(nothing, float.NaN);

        Assert.Equal(StarVerdict.Even, Of(new Picture(300, 200, nothing)));
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(7, 5)]
    [InlineData(2, 900)]
    [InlineData(17, 16)]
    public void Verdict_TinyPicture_Even(int width, int height) =>
        Assert.Equal(StarVerdict.Even, Of(new DrawnSky(width, height, 50.0, 2.0, 2).Picture()));

    [Fact]
    public void Verdict_FlatWithVignettingAndDust_Even()
    {
        var flat = new DrawnSky(1400, 1000, 0.0, 90.0, 3);
        for (var y = 0; y < 1000; y++)
        {
            for (var x = 0; x < 1400; x++)
            {
                var r = double.Hypot(x - 690.0, y - 510.0) / 860.0;
                var dust = double.Hypot(x - 400.0, y - 300.0);
                flat[x, y] += (float)(
                    30000.0 * (1.0 - (0.4 * r * r)) * (dust is > 12.0 and < 30.0 ? 0.96 : 1.0)
                );
            }
        }

        Assert.Equal(StarVerdict.Even, Of(flat.Picture()));
    }

    [Fact]
    public void Verdict_FourPoints_TooFewStars()
    {
        var sky = new DrawnSky(800, 600, 500.0, 8.0, 4).Strew(4, 1.4, 60.0);

        var found = sky.Find();

        Assert.Equal(StarVerdict.TooFewStars, found.Verdict);
        Assert.Equal(
            "too few stars: 4 found; expose longer, or wait for clearer sky",
            found.Complaint
        );
    }

    [Fact]
    public void Verdict_NearlyAllAtTheTop_Overexposed() =>
        Assert.Equal(
            StarVerdict.Overexposed,
            Of(new DrawnSky(800, 600, 70000.0, 900.0, 5).Picture())
        );

    [Fact]
    public void Verdict_HillsAndTrees_Daylight()
    {
        // Structure of all sizes: what a picture taken by day is to the eye of statistics.
        var day = new DrawnSky(1024, 768, 0.0, 30.0, 6);
        for (var cell = 128; cell >= 2; cell /= 2)
        {
            var (columns, rows) = ((1024 / cell) + 2, (768 / cell) + 2);
            var heights = new double[columns * rows];
            for (var i = 0; i < heights.Length; i++)
            {
                heights[i] = day.Normal() * 900.0 * Math.Pow(cell / 8.0, 0.8);
            }

            for (var y = 0; y < 768; y++)
            {
                for (var x = 0; x < 1024; x++)
                {
                    var (i, j) = (x / cell, y / cell);
                    var (u, v) = (x / (double)cell - i, y / (double)cell - j);
                    var at = (j * columns) + i;
                    day[x, y] += (float)(
                        (heights[at] * (1 - u) * (1 - v))
                        + (heights[at + 1] * u * (1 - v))
                        + (heights[at + columns] * (1 - u) * v)
                        + (heights[at + columns + 1] * u * v)
                    );
                }
            }
        }

        for (var y = 0; y < 768; y++)
        {
            for (var x = 0; x < 1024; x++)
            {
                day[x, y] += 25000f;
            }
        }

        Assert.Equal(StarVerdict.Daylight, Of(day.Picture()));
    }

    [Fact]
    public void Verdict_RingsOfLight_Defocused()
    {
        var sky = new DrawnSky(1400, 1000, 800.0, 12.0, 7);
        for (var i = 0; i < 40; i++)
        {
            var (x, y) = (sky.Between(60.0, 1340.0), sky.Between(60.0, 940.0));
            for (var j = (int)y - 30; j <= (int)y + 30; j++)
            {
                for (var k = (int)x - 30; k <= (int)x + 30; k++)
                {
                    if (double.Hypot(k - x, j - y) is > 8.0 and < 22.0)
                    {
                        sky[k, j] += 20f + (5f * i);
                    }
                }
            }
        }

        var found = sky.Find();

        Assert.Equal(StarVerdict.Defocused, found.Verdict);
        Assert.StartsWith("out of focus: its stars are discs about", found.Complaint);
    }

    [Fact]
    public void Complaint_FrameWithStars_None()
    {
        var sky = new DrawnSky(800, 600, 500.0, 8.0, 8).Strew(30, 1.4, 40.0);

        Assert.Null(sky.Find().Complaint);
    }

    private static StarVerdict Of(Picture picture) => DrawnSky.Find(picture).Verdict;
}
