using Framing.Fits;
using FsCheck;
using FsCheck.Xunit;

namespace Framing.Imaging.Tests;

public sealed class StretchTests
{
    [Fact]
    public void Automatic_SkyWithStars_ShowsTheSkyDarkGreyAndHardlyAnythingBlackOrWhite()
    {
        var picture = Sky(3000f, 40f, 1);
        var shown = Shown(picture, Stretch.Automatic(picture));

        // The sky at 16 % of 255, give or take a level; below 3 sigma lie 0.135 % of normal samples.
        Assert.InRange(shown.Order().ElementAt(shown.Length / 2), 40, 42);
        Assert.InRange(shown.Count(value => value == 0), 1, shown.Length / 400);
        Assert.InRange(shown.Count(value => value == 255), 1, shown.Length / 500);
    }

    [Fact]
    public void Automatic_FiveHundredStars_HardlyMoveTheSky()
    {
        var without = SampleStatistics.Of(Sky(3000f, 40f, 0), 0, 1)!.Value;
        var with = SampleStatistics.Of(Sky(3000f, 40f, 500), 0, 1)!.Value;

        Assert.Equal(40f, without.Spread, 1.0);
        Assert.Equal(without.Median, with.Median, 2.0);

        // 2,000 of 60,000 samples are stars: the median of the distances moves by some 4 % of sigma.
        Assert.Equal(without.Spread, with.Spread, 2.5);
    }

    [Fact]
    public void Automatic_Linked_UsesOneCurveForAllColours()
    {
        var picture = new Picture(
            300,
            200,
            Sky(1000f, 20f, 5).Plane(0).ToArray(),
            Sky(2000f, 20f, 5).Plane(0).ToArray(),
            Sky(3000f, 20f, 5).Plane(0).ToArray()
        );

        Assert.Single(Stretch.Automatic(picture).Curves.Distinct());
        Assert.Equal(3, Stretch.Automatic(picture, linked: false).Curves.Distinct().Count());
    }

    /// <summary>Red, white and blue stars from faint to very bright: their hue is that of their samples.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Show_ColouredStars_KeepTheirHue(bool linked)
    {
        const float sky = 1000f;
        (float Red, float Blue)[] colours = [(1f, 0.4f), (1f, 1f), (0.5f, 1f)];
        float[] lights = [2000f, 20_000f, 60_000f];
        var planes = new float[3][];
        for (var plane = 0; plane < 3; plane++)
        {
            planes[plane] = Sky(sky, 20f, 0).Plane(0).ToArray();
            for (var star = 0; star < 9; star++)
            {
                var (red, blue) = colours[star % 3];
                var share =
                    plane == 0 ? red
                    : plane == 2 ? blue
                    : (red + blue) / 2f;
                planes[plane][(300 * (20 + star)) + 40] = sky + (share * lights[star / 3]);
            }
        }

        var picture = new Picture(300, 200, planes);
        var stretch = Stretch.Automatic(picture, linked);
        var pixels = new byte[4 * 300 * 200];
        stretch.Show(new ResampledPicture(300, 200, planes), pixels);

        for (var star = 0; star < 9; star++)
        {
            var (red, blue) = colours[star % 3];
            var pixel = pixels.AsSpan(4 * ((300 * (20 + star)) + 40), 4);
            Assert.Equal(255, pixel[3]);
            Assert.True(pixel[0] + pixel[2] > 200, "A star is bright.");
            if (lights[star / 3] > 10_000f)
            {
                Assert.Equal(blue / red, pixel[2] / (float)pixel[0], 0.1f * blue / red);
            }
            else
            {
                Assert.Equal(
                    Math.Sign(blue - red),
                    Math.Sign(pixel[2] - pixel[0]) * (red == blue ? 0 : 1)
                );
            }
        }

        // The sky is dark grey in every colour.
        for (var channel = 0; channel < 3; channel++)
        {
            var median = Enumerable
                .Range(0, 300 * 200)
                .Select(i => pixels[(4 * i) + channel])
                .Order()
                .ElementAt(300 * 100);
            Assert.InRange(median, 38, 44);
        }
    }

    [Fact]
    public void Show_UndefinedSamples_AreTransparent()
    {
        float[] plane = [1f, float.NaN, 3f, 2f];
        var pixels = new byte[16];
        pixels.AsSpan().Fill(9);
        Stretch
            .Automatic(new Picture(2, 2, plane))
            .Show(new ResampledPicture(2, 2, [plane]), pixels, localContrast: 1f);

        Assert.Equal(new byte[4], pixels[4..8]);
        Assert.All([3, 11, 15], at => Assert.Equal(255, pixels[at]));
        Assert.Equal(pixels[0], pixels[2]);
    }

    [Fact]
    public void Show_OtherSizeOrPlanes_Refused()
    {
        var stretch = Stretch.AsStored(new Picture(1, 1, [1f]));
        Assert.Throws<ArgumentException>(() =>
            stretch.Show(
                new ResampledPicture(
                    1,
                    1,
                    [
                        [1f],
                    ]
                ),
                new byte[3]
            )
        );
        Assert.Throws<ArgumentException>(() =>
            stretch.Show(
                new ResampledPicture(
                    1,
                    1,
                    [
                        [1f],
                        [1f],
                        [1f],
                    ]
                ),
                new byte[4]
            )
        );
    }

    [Theory]
    [InlineData(0f)]
    [InlineData(5f)]
    [InlineData(-1e30f)]
    [InlineData(float.NaN)]
    [InlineData(float.PositiveInfinity)]
    public void Automatic_OneValueThroughout_IsShownWithoutFault(float value)
    {
        var picture = new Picture(4, 4, [.. Enumerable.Repeat(value, 16)]);

        Assert.All(
            Stretch.Automatic(picture).Curves,
            curve => Assert.True(curve.White > curve.Black)
        );
        Assert.Single(Shown(picture, Stretch.Automatic(picture)).Distinct());
    }

    [Theory]
    [InlineData(PictureFormat.Png, 20000f, 0.5f)]
    [InlineData(PictureFormat.Png, 900f, null)]
    [InlineData(PictureFormat.Fits, 20000f, null)]
    public void For_PngMadeForTheEye_IsShownAsStored(PictureFormat format, float sky, float? middle)
    {
        var made = Sky(sky, 40f, 3);
        var picture = new Picture(made.Width, made.Height, made.Plane(0).ToArray())
        {
            Format = format,
            SampleFormat = SampleFormat.UInt16,
        };

        var curve = Stretch.For(picture).Curves[0];

        Assert.Equal(middle is not null, curve == new ToneCurve(0f, 65535f, 0.5f));
    }

    [Property]
    public bool Apply_Curve_RisesFromZeroToOne(NormalFloat a, NormalFloat b, PositiveInt middle)
    {
        var curve = new ToneCurve(0f, 1f, 1f / (1f + middle.Get));
        var (low, high) = ((float)Math.Min(a.Get, b.Get), (float)Math.Max(a.Get, b.Get));
        return curve.Apply(low) <= curve.Apply(high)
            && curve.Apply(low) is >= 0f and <= 1f
            && curve.Apply(high) is >= 0f and <= 1f;
    }

    [Theory]
    [InlineData(0.002f, 0.16f)]
    [InlineData(0.3f, 0.16f)]
    [InlineData(0.9f, 0.5f)]
    public void MiddleFor_Share_IsShownAtTheWantedBrightness(float share, float brightness) =>
        Assert.Equal(
            brightness,
            new ToneCurve(0f, 1f, ToneCurve.MiddleFor(share, brightness)).Apply(share),
            1e-5f
        );

    [Fact]
    public void Apply_NaN_IsBlack() =>
        Assert.Equal(
            0,
            Shown(new Picture(1, 1, [float.NaN]), Stretch.AsStored(new Picture(1, 1, [1f])))[0]
        );

    private static byte[] Shown(Picture picture, Stretch stretch)
    {
        var shown = new byte[picture.Width * picture.Height];
        stretch.Apply(0, picture.Plane(0), shown);
        return shown;
    }

    /// <summary>A normally distributed background and, when asked, bright stars of four pixels each.</summary>
    private static Picture Sky(float level, float sigma, int stars)
    {
        var random = new Random(7);
        var samples = new float[300 * 200];
        for (var i = 0; i < samples.Length; i++)
        {
            var radius = Math.Sqrt(-2.0 * Math.Log(1.0 - random.NextDouble()));
            samples[i] =
                level + (sigma * (float)(radius * Math.Cos(2.0 * Math.PI * random.NextDouble())));
        }

        for (var star = 0; star < stars; star++)
        {
            samples.AsSpan(random.Next(samples.Length - 4), 4).Fill(level + 20000f);
        }

        return new(300, 200, samples);
    }
}
