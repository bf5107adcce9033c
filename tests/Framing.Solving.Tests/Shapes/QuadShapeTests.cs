using Framing.Sky;

namespace Framing.Solving.Tests;

public sealed class QuadShapeTests
{
    [Fact]
    public void Of_MovedTurnedScaledAndShuffledPoints_IsTheSame()
    {
        var random = new Random(12);
        for (var i = 0; i < 2000; i++)
        {
            var points = Points(random);
            var shape = QuadShape.Of(points);
            var (sin, cos) = Math.SinCos(random.NextDouble() * Math.Tau);
            var scale = 0.1 + (5.0 * random.NextDouble());
            var moved = Array.ConvertAll(
                points,
                point => new PixelPosition(
                    (scale * ((cos * point.X) - (sin * point.Y))) + 77.0,
                    (scale * ((sin * point.X) + (cos * point.Y))) - 1234.0
                )
            );
            random.Shuffle(moved);
            AssertSame(shape, QuadShape.Of(moved));
        }
    }

    [Fact]
    public void Mirrored_IsTheShapeOfTheMirroredPicture()
    {
        var random = new Random(13);
        for (var i = 0; i < 2000; i++)
        {
            var points = Points(random);
            var mirrored = Array.ConvertAll(points, point => point with { X = -point.X });
            AssertSame(QuadShape.Of(points).Mirrored, QuadShape.Of(mirrored));
        }
    }

    [Fact]
    public void Of_FourTimesOnePoint_IsRefused()
    {
        PixelPosition point = new(3.0, 4.0);
        Assert.Throws<ArgumentException>(() => QuadShape.Of([point, point, point, point]));
        Assert.Throws<ArgumentException>(() => QuadShape.Of([point, new(1.0, 1.0)]));
    }

    private static PixelPosition[] Points(Random random) =>
        [
            .. Enumerable
                .Range(0, 4)
                .Select(_ => new PixelPosition(
                    4000.0 * random.NextDouble(),
                    3000.0 * random.NextDouble()
                )),
        ];

    private static void AssertSame(QuadShape expected, QuadShape actual)
    {
        Assert.Equal(expected.Cx, actual.Cx, 1e-9);
        Assert.Equal(expected.Cy, actual.Cy, 1e-9);
        Assert.Equal(expected.Dx, actual.Dx, 1e-9);
        Assert.Equal(expected.Dy, actual.Dy, 1e-9);
    }
}
