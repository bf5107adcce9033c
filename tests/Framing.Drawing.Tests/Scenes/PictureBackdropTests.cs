using Framing.Imaging;
using Framing.Sky;

namespace Framing.Drawing.Tests;

public sealed class PictureBackdropTests
{
    private const int Width = 900;
    private const int Height = 600;

    [Fact]
    public void Constructor_PictureWithoutCoordinates_IsRefused() =>
        Assert.Throws<ArgumentException>(() =>
            new PictureBackdrop(new Picture(4, 4, new float[16]))
        );

    [Theory]
    [InlineData(0.0, false, false)]
    [InlineData(37.0, false, true)]
    [InlineData(210.0, true, false)]
    public void ToPng_TurnedPicture_ItsStarsFallOnTheChartsPlaces(
        double cameraAngle,
        bool mirrored,
        bool asTheCameraSees
    )
    {
        var centre = InventedSky.At(0.05, 62.0);
        var angle = PositionAngle.FromDegrees(cameraAngle);
        var frame = new TanWorldCoordinates(
            new((Width + 1) / 2.0, (Height + 1) / 2.0),
            centre,
            PixelMatrix.FromPositionAngle(angle, Angle.FromArcseconds(15.0), mirrored)
        );
        PixelPosition[] stars =
        [
            new(300.3, 200.7),
            new(600.2, 250.0),
            new(420.5, 430.5),
            new(700.0, 480.2),
        ];
        var scene = new SkyScene
        {
            View = new(
                centre,
                Angle.FromDegrees(4.5),
                Angle.FromDegrees(3.0),
                asTheCameraSees ? angle : PositionAngle.North,
                asTheCameraSees && mirrored
            ),
            Backdrop = new PictureBackdrop(Shot(frame, stars)),
        };
        var picture = SkyPicture.Compose(scene, new(1200, 800));
        var pixels = new Pixels(picture.ToPng());
        foreach (var star in stars)
        {
            Assert.True(picture.Chart.TrySkyToPicture(frame.PixelToSky(star), out var place));
            var ground = pixels[(int)place.X - 12, (int)place.Y - 12].Red + 60.0;
            var (sum, sumX, sumY) = (0.0, 0.0, 0.0);
            for (var row = (int)place.Y - 10; row <= (int)place.Y + 10; row++)
            {
                for (var column = (int)place.X - 10; column <= (int)place.X + 10; column++)
                {
                    var light = Math.Max(0.0, pixels[column, row].Red - ground);
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
    public void Fill_OutsideThePicture_IsClear()
    {
        var centre = InventedSky.At(80.0, -10.0);
        var frame = new TanWorldCoordinates(
            new((Width + 1) / 2.0, (Height + 1) / 2.0),
            centre,
            PixelMatrix.FromPositionAngle(PositionAngle.North, Angle.FromArcseconds(15.0), false)
        );
        var chart = SkyPicture.ChartOf(
            new() { View = new(centre, Angle.FromDegrees(8.0), Angle.FromDegrees(6.0)) }
        );
        var pixels = new byte[4 * chart.Width * chart.Height];
        new PictureBackdrop(Shot(frame, [])).Fill(
            chart.ChartWorldCoordinates,
            chart.Width,
            chart.Height,
            pixels
        );
        Assert.Equal(0, pixels[3]);
        var middle = ((chart.Height / 2) * chart.Width) + (chart.Width / 2);
        Assert.Equal(255, pixels[(4 * middle) + 3]);

        // The picture spans 3.75° by 2.5° of the sky: so many of the chart's pixels are covered.
        var expected = 3.75 * 2.5 / Math.Pow(chart.Scale.Degrees, 2.0);
        var found = Enumerable.Range(0, pixels.Length / 4).Count(i => pixels[(4 * i) + 3] == 255);
        Assert.Equal(expected, found, 0.01 * expected);
    }

    /// <summary>A frame with a faint slope of sky and Gaussian stars.</summary>
    private static Picture Shot(TanWorldCoordinates frame, PixelPosition[] stars)
    {
        var samples = new float[Width * Height];
        for (var row = 0; row < Height; row++)
        {
            for (var column = 0; column < Width; column++)
            {
                var light = 1000.0 + ((row * 7 + column * 13) % 11);
                foreach (var star in stars)
                {
                    var (x, y) = (column + 1.0 - star.X, row + 1.0 - star.Y);
                    light += 20000.0 * Math.Exp(-((x * x) + (y * y)) / (2.0 * 1.8 * 1.8));
                }

                samples[(row * Width) + column] = (float)light;
            }
        }

        return new(Width, Height, samples) { Coordinates = frame };
    }
}
