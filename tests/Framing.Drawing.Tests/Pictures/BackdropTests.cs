using Framing.Sky;

namespace Framing.Drawing.Tests;

public sealed class BackdropTests
{
    /// <summary>A backdrop that is black but for stars, each spread as a small Gaussian at the place its world coordinates give.</summary>
    private sealed class Gaussians(IReadOnlyList<SkyDirection> stars) : IBackdrop
    {
        public int Asked { get; private set; }

        public void Fill(TanWorldCoordinates chart, int width, int height, Span<byte> pixels)
        {
            Asked = width * height;
            var places = stars
                .Select(star => chart.TrySkyToPixel(star, out var pixel) ? pixel : default)
                .ToList();
            for (var row = 0; row < height; row++)
            {
                for (var column = 0; column < width; column++)
                {
                    var (x, y) = (column + 1.0, (double)(height - row));
                    var light = 0.0;
                    foreach (var place in places)
                    {
                        var square =
                            ((x - place.X) * (x - place.X)) + ((y - place.Y) * (y - place.Y));
                        light += square < 60.0 ? 240.0 * Math.Exp(-square / 6.0) : 0.0;
                    }

                    var at = 4 * ((row * width) + column);
                    pixels[at] = pixels[at + 1] = pixels[at + 2] = (byte)Math.Min(255.0, light);
                    pixels[at + 3] = 255;
                }
            }
        }
    }

    [Theory]
    [InlineData(0.0, false)]
    [InlineData(121.0, false)]
    [InlineData(33.0, true)]
    public void ToPng_Backdrop_ItsStarsFallOnTheCharts(double up, bool mirrored)
    {
        // The stars of the backdrop are measured on a picture without stars of its own, and held against the mapping.
        var centre = InventedSky.At(40.4, 60.9);
        SkyDirection[] stars =
        [
            centre.Offset(PositionAngle.FromDegrees(20.0), Angle.FromDegrees(0.9)),
            centre.Offset(PositionAngle.FromDegrees(130.0), Angle.FromDegrees(1.1)),
            centre.Offset(PositionAngle.FromDegrees(255.0), Angle.FromDegrees(0.7)),
        ];
        var backdrop = new Gaussians(stars);
        var scene = new SkyScene
        {
            View = new(
                centre,
                Angle.FromDegrees(5.0),
                Angle.FromDegrees(3.5),
                PositionAngle.FromDegrees(up),
                mirrored
            ),
            Backdrop = backdrop,
        };
        var picture = SkyPicture.Compose(scene, new(800, 500));
        var pixels = new Pixels(picture.ToPng());
        Assert.Equal(picture.Chart.Width * picture.Chart.Height, backdrop.Asked);
        foreach (var star in stars)
        {
            Assert.True(picture.Chart.TrySkyToPicture(star, out var place));
            var (sum, sumX, sumY) = (0.0, 0.0, 0.0);
            for (var row = (int)place.Y - 9; row <= (int)place.Y + 9; row++)
            {
                for (var column = (int)place.X - 9; column <= (int)place.X + 9; column++)
                {
                    // Above the grid's lines, which shine at about 60 on black.
                    var light = Math.Max(0.0, pixels[column, row].Red - 70.0);
                    sum += light;
                    sumX += light * (column + 0.5);
                    sumY += light * (row + 0.5);
                }
            }

            Assert.Equal(place.X, sumX / sum, 0.3);
            Assert.Equal(place.Y, sumY / sum, 0.3);
        }
    }

    [Fact]
    public void ToPng_BackdropOutsidePanels_IsDimmed()
    {
        var scene = InventedSky.Scene(40.4, 60.9, stars: 0) with
        {
            Objects = [],
            Targets = [],
            FallsShort = [],
            Backdrop = new Grey(),
        };
        var picture = SkyPicture.Compose(scene);
        var pixels = new Pixels(picture.ToPng());
        Assert.True(
            picture.Chart.TrySkyToPicture(
                scene.Panels[0].Centre.Offset(PositionAngle.North, Angle.FromDegrees(0.7)),
                out var inside
            )
        );
        Assert.Equal(160, pixels[(int)inside.X, (int)inside.Y].Red, 3.0);
        Assert.Equal(72, pixels[picture.Chart.Left + 40, picture.Chart.Top + 40].Red, 3.0);
    }

    [Fact]
    public void ToPng_BackdropAtNight_IsRed()
    {
        var scene = InventedSky.Scene(40.4, 60.9) with { Backdrop = new Grey() };
        var picture = SkyPicture.Compose(scene, new(800, 500), PicturePalette.Night);
        Assert.All(
            new Pixels(picture.ToPng()).All,
            colour => Assert.True(colour.Green <= 2 && colour.Blue <= 2)
        );
    }

    private sealed class Grey : IBackdrop
    {
        public void Fill(TanWorldCoordinates chart, int width, int height, Span<byte> pixels)
        {
            pixels.Fill(160);
            for (var i = 3; i < pixels.Length; i += 4)
            {
                pixels[i] = 255;
            }
        }
    }
}
