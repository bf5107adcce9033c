using Framing.Sky;

namespace Framing.Mosaics.Tests;

public sealed class ConvexHullTests
{
    [Fact]
    public void Of_OnePointManyTimes_IsThatPoint()
    {
        var point = new PlanePoint(0.3, -0.1);

        Assert.Equal([point], ConvexHull.Of([point, point, point]));
    }

    [Fact]
    public void Of_TwoPointsManyTimes_AreBothEnds()
    {
        PlanePoint a = new(0.3, -0.1),
            b = new(-0.2, 0.4);

        Assert.Equal([b, a], ConvexHull.Of([a, b, b, a]));
    }

    [Fact]
    public void Of_PointsOnALine_AreTheEnds()
    {
        // 0.1 + 0.2 is not 0.3 in double precision: exact multiples of one step keep the line exact.
        PlanePoint[] line =
        [
            .. Enumerable.Range(0, 9).Select(i => new PlanePoint(i * 0.25, i * 0.5)),
        ];

        Assert.Equal([line[0], line[8]], ConvexHull.Of([.. line.Reverse(), line[4]]));
    }

    [Fact]
    public void Of_PointsOnAnUprightLine_AreTheEnds() =>
        Assert.Equal(
            [new PlanePoint(1.0, -2.0), new PlanePoint(1.0, 3.0)],
            ConvexHull.Of([new(1.0, 0.0), new(1.0, 3.0), new(1.0, -2.0), new(1.0, 1.0)])
        );

    [Fact]
    public void Of_SquareWithPointsOnSidesAndInside_IsTheFourCornersCounterClockwise()
    {
        PlanePoint[] points =
        [
            new(1, 1),
            new(0, 0),
            new(0.5, 0),
            new(0, 1),
            new(0.5, 0.5),
            new(1, 0),
            new(1, 0.25),
            new(0.75, 1),
        ];

        Assert.Equal(
            [new(0, 0), new(1, 0), new(1, 1), new PlanePoint(0, 1)],
            ConvexHull.Of(points)
        );
    }

    [Fact]
    public void Of_CornerOneDigitOutsideALine_IsKept()
    {
        // One unit in the last place above the side: rounding of the plain formula loses it.
        PlanePoint a = new(0.5, 0.5),
            b = new(12.0, 12.0),
            c = new(24.0, 24.0),
            above = new(12.0, Math.BitIncrement(12.0));

        Assert.Equal([a, c, above], ConvexHull.Of([a, b, c, above]));
    }

    [Fact]
    public void Of_RandomClouds_HoldsEveryPointAndTurnsLeftOnly()
    {
        var random = new Random(4711);
        for (var run = 0; run < 500; run++)
        {
            // Coarse steps make many repeated points and points on one line.
            var points = new PlanePoint[random.Next(3, 60)];
            for (var i = 0; i < points.Length; i++)
            {
                points[i] = new(random.Next(-8, 9) / 8.0, random.Next(-8, 9) / 8.0);
            }

            var hull = ConvexHull.Of(points);
            for (var i = 0; i < hull.Length; i++)
            {
                var (from, to) = (hull[i], hull[(i + 1) % hull.Length]);
                Assert.All(points, p => Assert.True(Cross(from, to, p) >= 0.0 || hull.Length < 3));
                Assert.True(hull.Length < 3 || Cross(from, to, hull[(i + 2) % hull.Length]) > 0.0);
            }

            Assert.All(hull, corner => Assert.Contains(corner, points));
        }
    }

    [Fact]
    public void Of_NoPoint_Throws() => Assert.Throws<ArgumentException>(() => ConvexHull.Of([]));

    [Fact]
    public void Of_PointThatIsNotFinite_SaysWhich() =>
        Assert.Contains(
            "Point 1",
            Assert
                .Throws<ArgumentException>(() => ConvexHull.Of([new(0, 0), new(double.NaN, 0)]))
                .Message,
            StringComparison.Ordinal
        );

    private static double Cross(PlanePoint a, PlanePoint b, PlanePoint c) =>
        ((b.Xi - a.Xi) * (c.Eta - a.Eta)) - ((b.Eta - a.Eta) * (c.Xi - a.Xi));
}
