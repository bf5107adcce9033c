using Framing.Sky;

namespace Framing.Imaging.Tests;

public sealed class PictureTests
{
    [Fact]
    public void Reduced_ByTwo_AveragesWhatIsDefinedAndDropsTheRest()
    {
        float[] samples = [1, 3, float.NaN, float.NaN, 9, 5, 7, float.NaN, 6, 9, 8, 8, 8, 8, 8];
        var picture = new Picture(5, 3, samples);

        var reduced = picture.Reduced(2);

        Assert.Equal((2, 1, 2), (reduced.Width, reduced.Height, reduced.Reduction));
        Assert.Equal([4f, 6f], reduced.Plane(0).ToArray());
    }

    [Fact]
    public void Reduced_BlockOfNothing_IsNothing() =>
        Assert.True(
            float.IsNaN(
                new Picture(2, 2, [float.NaN, float.NaN, float.NaN, float.NaN]).Reduced(2).Plane(0)[
                    0
                ]
            )
        );

    [Fact]
    public void Reduced_Coordinates_ShowTheSameSky()
    {
        var world = new TanWorldCoordinates(
            new(3.0, 4.0),
            SkyDirection.FromDegrees(10, 20),
            new(-0.01, 0.002, 0.002, 0.01)
        );
        var picture = new Picture(9, 9, new float[81]) { Coordinates = world };

        var reduced = picture.Reduced(3);

        // The middle of the reduced pixel (2, 2) is the middle of the pixel (5, 5).
        Assert.InRange(
            reduced
                .Coordinates!.PixelToSky(new(2, 2))
                .SeparationTo(world.PixelToSky(new(5, 5)))
                .Arcseconds,
            0.0,
            1e-9
        );
    }

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    public void Reduced_FactorOutOfRange_IsRefused(int factor) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new Picture(2, 5, new float[10]).Reduced(factor)
        );

    [Theory]
    [InlineData(2, 5)]
    [InlineData(1, 9)]
    public void Picture_PlanesThatDoNotFit_AreRefused(int planes, int samples) =>
        Assert.Throws<ArgumentException>(() =>
            new Picture(5, 1, [.. Enumerable.Range(0, planes).Select(_ => new float[samples])])
        );

    [Theory]
    [InlineData(100, 100, 10_000, 1)]
    [InlineData(100, 100, 9_999, 2)]
    [InlineData(60_000, 60_000, 30_000_000, 11)]
    [InlineData(1, 1000, 10, 1)]
    public void FactorFor_MostPixels_IsTheLeastThatFits(
        int width,
        int height,
        long most,
        int factor
    ) => Assert.Equal(factor, BlockAverage.FactorFor(width, height, most));
}
