using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Drawing.Tests;

public sealed class MadeUpNebulaeTests
{
    private static readonly SkyDirection Middle = SkyDirection.FromDegrees(38.0, 61.0);

    private static readonly SkyOutline Outline = SkyOutline.Ellipse(
        Middle,
        Angle.FromDegrees(3.0),
        Angle.FromDegrees(1.6),
        PositionAngle.FromDegrees(30.0)
    );

    private static ChartObject Object(ChartObjectKind kind = ChartObjectKind.Nebula) =>
        new("The ember", kind, Outline);

    private static TanWorldCoordinates Chart(int width, int height, double up, double degrees) =>
        new(
            new((width + 1) / 2.0, (height + 1) / 2.0),
            Middle,
            PixelMatrix.FromPositionAngle(
                PositionAngle.FromDegrees(up),
                Angle.FromDegrees(degrees / width),
                mirrored: false
            )
        );

    private static byte[] Filled(
        MadeUpNebulae nebulae,
        int width,
        int height,
        double up = 0.0,
        double degrees = 4.5
    )
    {
        var pixels = new byte[4 * width * height];
        nebulae.Fill(Chart(width, height, up, degrees), width, height, pixels);
        return pixels;
    }

    [Fact]
    public void Fill_ANebula_ShinesInsideItsOutlineAndNowhereElse()
    {
        const int width = 360,
            height = 240;
        var chart = Chart(width, height, 0.0, 4.5);
        var pixels = Filled(new([Object()]), width, height);
        int inside = 0,
            lit = 0,
            outside = 0;
        for (var row = 0; row < height; row++)
        {
            for (var column = 0; column < width; column++)
            {
                var direction = chart.PixelToSky(new(column + 1.0, height - row));
                var opacity = pixels[(4 * ((row * width) + column)) + 3];

                // By the ellipse itself, with a border of the pixels between which the light is mixed.
                var away = Away(direction);
                if (away < 0.9)
                {
                    inside++;
                    lit += opacity > 25 ? 1 : 0;
                }
                else if (away > 1.06)
                {
                    outside++;
                    Assert.Equal(0, opacity);
                }
            }
        }

        Assert.True(outside > 10_000);
        Assert.InRange(lit, inside / 2, inside);
    }

    [Theory]
    [InlineData(90.0, 720, 480)]
    [InlineData(213.0, 360, 240)]
    public void Fill_AnotherChart_ShowsTheSameClouds(double up, int width, int height)
    {
        var nebulae = new MadeUpNebulae([Object()]);
        var north = Filled(nebulae, 360, 240);
        var turned = Filled(nebulae, width, height, up, degrees: 4.5);
        var (chart, other) = (Chart(360, 240, 0.0, 4.5), Chart(width, height, up, 4.5));
        var (sum, count) = (0.0, 0);
        for (var row = 0; row < 240; row += 3)
        {
            for (var column = 0; column < 360; column += 3)
            {
                var direction = chart.PixelToSky(new(column + 1.0, 240.0 - row));
                Assert.True(other.TrySkyToPixel(direction, out var pixel));
                var (x, y) = ((int)Math.Round(pixel.X) - 1, height - (int)Math.Round(pixel.Y));
                if (Away(direction) < 1.0 && x >= 0 && x < width && y >= 0 && y < height)
                {
                    sum += Math.Abs(
                        north[(4 * ((row * 360) + column)) + 3]
                            - turned[(4 * ((y * width) + x)) + 3]
                    );
                    count++;
                }
            }
        }

        // Of 158 steps of opacity; the finest octaves come and go with the scale, and a pixel is not a point.
        Assert.True(count > 1000);
        Assert.InRange(sum / count, 0.0, 6.0);
    }

    [Fact]
    public void Fill_Again_GivesTheSameBytesAndAnotherSeedOthers()
    {
        var first = Filled(new([Object()]), 200, 150);

        Assert.Equal(first, Filled(new([Object()]), 200, 150));
        Assert.NotEqual(first, Filled(new([Object()], 11), 200, 150));
        Assert.True(first.Where((_, i) => i % 4 == 3).Distinct().Count() > 60);
    }

    [Theory]
    [InlineData(ChartObjectKind.DarkNebula)]
    [InlineData(ChartObjectKind.StarCluster)]
    [InlineData(ChartObjectKind.Galaxy)]
    public void Fill_OtherKinds_StayDark(ChartObjectKind kind)
    {
        var pixels = Filled(new([Object(kind)]), 90, 60);
        Assert.All(pixels.Where((_, i) => i % 4 == 3), opacity => Assert.Equal(0, opacity));
    }

    [Fact]
    public void Fill_ChartOnTheOtherSideOfTheSky_StaysDark()
    {
        var chart = new TanWorldCoordinates(
            new(20.0, 20.0),
            Middle.Antipode,
            PixelMatrix.FromPositionAngle(
                PositionAngle.North,
                Angle.FromDegrees(0.1),
                mirrored: false
            )
        );
        var pixels = new byte[4 * 40 * 40];
        new MadeUpNebulae([Object()]).Fill(chart, 40, 40, pixels);
        Assert.All(pixels.Where((_, i) => i % 4 == 3), opacity => Assert.Equal(0, opacity));
    }

    [Fact]
    public void Fill_TooFewBytes_Throws() =>
        Assert.Throws<ArgumentException>(() =>
            new MadeUpNebulae([Object()]).Fill(Chart(10, 10, 0.0, 4.0), 10, 10, new byte[399])
        );

    [Theory]
    [InlineData(PicturePalette.Day)]
    [InlineData(PicturePalette.Night)]
    public void Compose_WithMadeUpLight_TheLegendSaysSo(PicturePalette palette)
    {
        var plain = InventedSky.Scene(40.4, 60.9);
        var scene = plain with { Backdrop = new MadeUpNebulae(plain.Targets) };
        const string said = "Glow, made up";

        var picture = SkyPicture.Compose(scene, new(1600, 1000), palette);
        Assert.Contains(picture.Labels, label => label.Text == said);
        Assert.DoesNotContain(
            SkyPicture.Compose(plain, new(1600, 1000), palette).Labels,
            label => label.Text == said
        );
        if (palette == PicturePalette.Night)
        {
            Assert.All(
                new Pixels(picture.ToPng()).All,
                colour => Assert.True(colour.Green <= 2 && colour.Blue <= 2)
            );
        }
    }

    /// <summary>How far out a direction is, as a part of the ellipse's radius that way: in the tangent plane of its middle.</summary>
    private static double Away(SkyDirection direction)
    {
        var distance = Math.Tan(Middle.SeparationTo(direction).Radians);
        var angle = Middle.PositionAngleTo(direction).Radians - Angle.FromDegrees(30.0).Radians;
        var along = distance * Math.Cos(angle) / Math.Tan(Angle.FromDegrees(1.5).Radians);
        var across = distance * Math.Sin(angle) / Math.Tan(Angle.FromDegrees(0.8).Radians);
        return Math.Sqrt((along * along) + (across * across));
    }
}
