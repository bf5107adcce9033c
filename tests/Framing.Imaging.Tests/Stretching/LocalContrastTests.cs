namespace Framing.Imaging.Tests;

public sealed class LocalContrastTests
{
    private const int Width = 320;
    private const int Height = 240;

    [Fact]
    public void Raise_FaintCloud_GainsContrastAndStarsKeepTheirs()
    {
        // A cloud 0.02 above a background of 0.16, 40 pixels wide, and a star of three pixels.
        var picture = Sky(Cloud);
        var before = (float[])picture.Clone();
        LocalContrast.Raise(picture, Width, Height, 1f);

        var rise = Mean(picture, 160, 120) - Mean(picture, 40, 200);
        Assert.InRange(rise / (Mean(before, 160, 120) - Mean(before, 40, 200)), 1.5f, 2.2f);
        Assert.Equal(before[At(250, 60)], picture[At(250, 60)], 0.03f);
        for (var x = 235; x < 265; x++)
        {
            // No dark ring beside the star.
            Assert.InRange(picture[At(x, 52)], 0.148f, 1f);
        }
    }

    [Fact]
    public void Raise_ByNothing_ChangesNothing()
    {
        var picture = Sky(Cloud);
        var before = (float[])picture.Clone();
        LocalContrast.Raise(picture, Width, Height, 0f);
        Assert.Equal(before, picture);
    }

    [Fact]
    public void Raise_FlatSkyWithAnUndefinedHalf_StaysFlatToTheBorder()
    {
        var picture = Sky((_, _) => 0.3f);
        for (var i = 0; i < picture.Length; i++)
        {
            picture[i] = i % Width < 150 ? float.NaN : 0.3f;
        }

        LocalContrast.Raise(picture, Width, Height, 3f);
        for (var i = 0; i < picture.Length; i++)
        {
            if (i % Width < 150)
            {
                Assert.True(float.IsNaN(picture[i]));
            }
            else
            {
                Assert.Equal(0.3f, picture[i], 1e-3f);
            }
        }
    }

    [Fact]
    public void Raise_MuchOfIt_StaysWithinBlackAndWhite()
    {
        var random = new Random(3);
        var picture = Sky((_, _) => random.NextSingle());
        LocalContrast.Raise(picture, Width, Height, 10f);
        Assert.All(picture, value => Assert.InRange(value, 0f, 1f));
    }

    [Theory]
    [InlineData(-0.1f)]
    [InlineData(11f)]
    [InlineData(float.NaN)]
    public void Raise_AmountOutOfRange_Refused(float amount) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            LocalContrast.Raise(new float[4], 2, 2, amount)
        );

    [Fact]
    public void Raise_OtherSize_Refused() =>
        Assert.Throws<ArgumentException>(() => LocalContrast.Raise(new float[5], 2, 2, 1f));

    private static float Cloud(int x, int y)
    {
        double cloud = ((x - 160.0) * (x - 160.0)) + ((y - 120.0) * (y - 120.0));
        double star = ((x - 250.0) * (x - 250.0)) + ((y - 60.0) * (y - 60.0));
        return (float)(
            0.16 + (0.02 * Math.Exp(-cloud / (2.0 * 17.0 * 17.0))) + (0.8 * Math.Exp(-star / 4.0))
        );
    }

    private static float[] Sky(Func<int, int, float> value) =>
        [.. Enumerable.Range(0, Width * Height).Select(i => value(i % Width, i / Width))];

    private static int At(int x, int y) => (y * Width) + x;

    private static float Mean(float[] picture, int x, int y) =>
        Enumerable.Range(0, 49).Average(i => picture[At(x + (i % 7) - 3, y + (i / 7) - 3)]);
}
