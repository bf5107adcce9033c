using Framing.Sky;

namespace Framing.Imaging.Tests;

public sealed class ResamplerTests
{
    private static readonly SkyDirection Centre = SkyDirection.FromDegrees(38.2, 61.4);

    [Fact]
    public void Resample_ToItsOwnPixels_GivesThePictureBack()
    {
        var picture = Ramp(World(Centre, 33.0, 12.0, true, new(10, 12)));

        var same = Draw(picture, picture.Coordinates!, picture.Width, picture.Height);

        Assert.All(
            Enumerable.Range(0, 40 * 30),
            i => Assert.Equal(picture.Plane(0)[i], same.Plane(0)[i], 1e-3f)
        );
        Assert.False(same.Covered.Contains(false));
    }

    [Fact]
    public void Resample_Ramp_GivesTheRampAtEveryPlace()
    {
        // A ramp is linear, so bilinear values are exact wherever a place lies between the middles of pixels.
        var picture = Ramp(World(Centre, 10.0, 60.0, false, new(20.5, 15.5)));
        var chart = World(Centre, 0.0, 47.0, false, new(30.5, 25.5)).WithRowsReversed(50);

        var drawn = Draw(picture, chart, 60, 50);

        var held = 0;
        for (var row = 0; row < 50; row++)
        {
            for (var column = 0; column < 60; column++)
            {
                Assert.True(
                    picture.Coordinates!.TrySkyToPixel(
                        chart.PixelToSky(new ArrayPosition(column, row).ToPixel()),
                        out var at
                    )
                );
                var inside = at is { X: >= 0.5 and <= 40.5, Y: >= 0.5 and <= 30.5 };
                Assert.Equal(inside, drawn.Covered[(row * 60) + column]);
                Assert.Equal(!inside, float.IsNaN(drawn.Plane(0)[(row * 60) + column]));
                if (at is { X: >= 1 and <= 40, Y: >= 1 and <= 30 })
                {
                    held++;
                    Assert.Equal(
                        (3.0 * at.X) + (100.0 * at.Y),
                        drawn.Plane(0)[(row * 60) + column],
                        1e-2
                    );
                }
            }
        }

        Assert.InRange(held, 1500, 3000);
    }

    [Fact]
    public void Resample_UndefinedSample_LeavesAHoleOfItsOwnSizeOnly()
    {
        var world = World(Centre, 0.0, 60.0, false, new(20.5, 15.5));
        var picture = Ramp(world);
        var samples = picture.Plane(0).ToArray();
        samples[(14 * 40) + 19] = float.NaN;
        var chart = World(Centre, 0.0, 6.0, false, new(200.5, 150.5));

        var drawn = Draw(new Picture(40, 30, samples) { Coordinates = world }, chart, 400, 300);

        // One pixel of the picture is ten by ten of the chart. The hole is where that pixel weighs half or more:
        // 4 · integral of (1 - 0.5 / (1 - u)) from 0 to 0.5 = 2 - 2 ln 2 = 0.614 of a pixel.
        Assert.InRange(drawn.Covered.Count(false), 55, 68);
    }

    [Fact]
    public void Resample_MuchCoarserChart_AveragesRatherThanPicks()
    {
        // A board of black and white pixels: seen from afar it is grey.
        var board = new float[400 * 400];
        for (var i = 0; i < board.Length; i++)
        {
            board[i] = ((i % 400) + (i / 400)) % 2 == 0 ? 0f : 100f;
        }

        var picture = new Picture(400, 400, board)
        {
            Coordinates = World(Centre, 0.0, 5.0, false, new(200.5, 200.5)),
        };

        var drawn = Draw(picture, World(Centre, 0.0, 50.0, false, new(20.5, 20.5)), 40, 40);

        Assert.All(drawn.Plane(0).ToArray(), sample => Assert.Equal(50f, sample, 0.01f));
    }

    [Fact]
    public void Resample_PictureBehindTheChart_CoversNothing()
    {
        var picture = Ramp(World(Centre.Antipode, 0.0, 600.0, false, new(20, 15)));

        Assert.False(
            Draw(picture, World(Centre, 0.0, 600.0, false, new(20, 15)), 40, 30)
                .Covered.Contains(true)
        );
    }

    [Fact]
    public void Resample_PictureWithoutPlace_IsRefused() =>
        Assert.Throws<ArgumentException>(() =>
            Draw(new Picture(1, 1, [1f]), World(Centre, 0, 1, false, new(1, 1)), 1, 1)
        );

    [Fact]
    public void Resample_Cancelled_Stops()
    {
        using var cancel = new CancellationTokenSource();
        cancel.Cancel();
        var picture = Ramp(World(Centre, 0.0, 60.0, false, new(20, 15)));

        Assert.ThrowsAny<OperationCanceledException>(() =>
            Resampler.Resample(picture, picture.Coordinates!, 40, 30, cancel: cancel.Token)
        );
    }

    private static ResampledPicture Draw(
        Picture picture,
        WorldCoordinates chart,
        int width,
        int height,
        Interpolation interpolation = Interpolation.Bilinear
    ) =>
        Resampler.Resample(
            picture,
            chart,
            width,
            height,
            interpolation,
            cancel: TestContext.Current.CancellationToken
        );

    private static TanWorldCoordinates World(
        SkyDirection centre,
        double angle,
        double arcseconds,
        bool mirrored,
        PixelPosition at
    ) =>
        new(
            at,
            centre,
            PixelMatrix.FromPositionAngle(
                PositionAngle.FromDegrees(angle),
                Angle.FromArcseconds(arcseconds),
                mirrored
            )
        );

    /// <summary>40 by 30 pixels of 3 x + 100 y.</summary>
    private static Picture Ramp(TanWorldCoordinates world)
    {
        var samples = new float[40 * 30];
        for (var i = 0; i < samples.Length; i++)
        {
            samples[i] = (3f * ((i % 40) + 1)) + (100f * ((i / 40) + 1));
        }

        return new(40, 30, samples) { Coordinates = world };
    }
}
