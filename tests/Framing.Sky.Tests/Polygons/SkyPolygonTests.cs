using FsCheck.Xunit;

namespace Framing.Sky.Tests;

public sealed class SkyPolygonTests
{
    [Fact]
    public void Area_Octant_IsAnEighthOfTheSphere()
    {
        var octant = Polygon((0.0, 0.0), (90.0, 0.0), (0.0, 90.0));
        Assert.Equal(Math.PI / 2.0, octant.Area.Steradians, 1e-15);
        Assert.Equal(Math.PI / 2.0, octant.SignedArea.Steradians, 1e-15);
        Assert.Equal(45.0, octant.Middle.RightAscension.Degrees, 1e-12);
        Assert.Equal(Math.Acos(1.0 / Math.Sqrt(3.0)), octant.Radius.Radians, 1e-15);
    }

    [Theory]
    [InlineData(0.001)]
    [InlineData(1.0)]
    [InlineData(30.0)]
    [InlineData(120.0)]
    public void Area_HalfALune_IsItsAngle(double degrees)
    {
        // From the pole down to the equator between two meridians: half of the lune's 2 * angle.
        foreach (var ra in new[] { 0.0, 200.0, 359.5 })
        {
            var north = Polygon((ra, 0.0), (ra + degrees, 0.0), (ra, 90.0));
            var south = Polygon((ra, 0.0), (ra + degrees, 0.0), (ra, -90.0));
            Assert.Equal(Angle.FromDegrees(degrees).Radians, north.Area.Steradians, 3e-15);
            Assert.Equal(Angle.FromDegrees(degrees).Radians, south.Area.Steradians, 3e-15);
        }
    }

    [Property(MaxTest = 300, Arbitrary = [typeof(Arbitraries)])]
    public void Area_RegularPolygon_IsTheClosedForm(SkyDirection centre, byte sides, byte size)
    {
        var n = 3 + (sides % 60);
        var radius = Angle.FromDegrees(0.01 + (size / 255.0 * 85.0));
        var corners = Ring(centre, radius, n);
        var polygon = new SkyPolygon(corners);

        // Napier: tan(half the corner's angle) = cot(pi/n) / cos(radius); the area is the excess of the n angles.
        var corner = 2.0 * Math.Atan(1.0 / (Math.Tan(Math.PI / n) * Math.Cos(radius.Radians)));
        var expected = (n * corner) - ((n - 2) * Math.PI);
        Assert.Equal(expected, polygon.Area.Steradians, 1e-13 * n);
        Assert.Equal(0.0, polygon.Middle.SeparationTo(centre).Radians, 1e-10);
        Assert.Equal(radius.Radians, polygon.Radius.Radians, 1e-10);
        Assert.True(polygon.Contains(centre));
    }

    [Fact]
    public void Area_ManySides_TendsToTheCap()
    {
        var radius = Angle.FromDegrees(40.0);
        var polygon = new SkyPolygon(Ring(SkyDirection.FromDegrees(355.0, 70.0), radius, 20_000));
        var cap = 2.0 * Math.PI * (1.0 - Math.Cos(radius.Radians));
        Assert.Equal(1.0, polygon.Area.Steradians / cap, 3e-8);
        Assert.True(polygon.Contains(SkyDirection.NorthPole));
    }

    [Property(MaxTest = 1000, Arbitrary = [typeof(Arbitraries)])]
    public void Area_Triangle_IsLHuiliers(SkyDirection a, PlanePoint first, PlanePoint second)
    {
        var plane = new TangentPlane(a);
        var (b, c) = (plane.Unproject(first), plane.Unproject(second));
        var (x, y, z) = (
            b.SeparationTo(c).Radians,
            c.SeparationTo(a).Radians,
            a.SeparationTo(b).Radians
        );
        var s = (x + y + z) / 2.0;
        var product =
            Math.Tan(s / 2.0)
            * Math.Tan((s - x) / 2.0)
            * Math.Tan((s - y) / 2.0)
            * Math.Tan((s - z) / 2.0);
        var expected = 4.0 * Math.Atan(Math.Sqrt(Math.Max(0.0, product)));

        // L'Huilier's form loses half of the digits on needles: compare where it is good.
        if (Math.Min(Math.Min(s - x, s - y), s - z) < 1e-4 * s || s < 1e-4)
        {
            return;
        }

        Assert.Equal(1.0, new SkyPolygon([a, b, c]).Area.Steradians / expected, 1e-8);
    }

    [Property(MaxTest = 300, Arbitrary = [typeof(Arbitraries)])]
    public void Area_AnyOutline_IsTheIntegralOverThePlane(SkyDirection middle, int seed)
    {
        var random = new Random(seed);
        var outline = new PlaneOutline(random, middle, Reach(random));
        var polygon = new SkyPolygon(outline.Corners);
        Assert.Equal(1.0, polygon.Area.Steradians / outline.AreaByQuadrature(), 1e-6);
    }

    [Property(MaxTest = 300, Arbitrary = [typeof(Arbitraries)])]
    public void Area_CutFromCornerToCorner_AddsUp(SkyDirection middle, int seed, byte from, byte to)
    {
        var random = new Random(seed);
        var corners = Convex(random, middle);
        var (i, j) = (from % corners.Count, to % corners.Count);
        (i, j) = (Math.Min(i, j), Math.Max(i, j));
        if (j - i < 2 || (i == 0 && j == corners.Count - 1))
        {
            return;
        }

        var one = new SkyPolygon([.. corners.Skip(i).Take(j - i + 1)]);
        var other = new SkyPolygon([.. corners.Skip(j), .. corners.Take(i + 1)]);
        Assert.Equal(
            new SkyPolygon(corners).SignedArea.Steradians,
            (one.SignedArea + other.SignedArea).Steradians,
            1e-13
        );
    }

    [Property(MaxTest = 300, Arbitrary = [typeof(Arbitraries)])]
    public void CornersBackwards_OnlyTheSignChanges(SkyDirection middle, int seed)
    {
        var random = new Random(seed);
        var corners = new PlaneOutline(random, middle, Reach(random)).Corners;
        var forwards = new SkyPolygon(corners);
        var backwards = new SkyPolygon([.. corners.Reverse()]);

        // The outline's corners go north through east: clockwise as seen from outside, which is negative.
        Assert.True(forwards.SignedArea.Steradians < 0.0);
        Assert.Equal(forwards.SignedArea.Steradians, -backwards.SignedArea.Steradians, 1e-14);
        Assert.Equal(forwards.Area.Steradians, backwards.Area.Steradians, 1e-14);
        Assert.Equal(0.0, forwards.Middle.SeparationTo(backwards.Middle).Radians, 1e-9);
        foreach (var direction in Around(random, middle, 10))
        {
            Assert.Equal(forwards.Contains(direction), backwards.Contains(direction));
        }
    }

    [Property(MaxTest = 500, Arbitrary = [typeof(Arbitraries)])]
    public void Contains_AnyDirection_IsTheAnswerOfThePlane(SkyDirection middle, int seed)
    {
        var random = new Random(seed);
        var reach = Reach(random);
        var outline = new PlaneOutline(random, middle, reach);
        var polygon = new SkyPolygon(outline.Corners);
        var plane = new TangentPlane(middle);
        for (var i = 0; i < 40; i++)
        {
            var point = new PlanePoint(
                ((2.0 * random.NextDouble()) - 1.0) * reach,
                ((2.0 * random.NextDouble()) - 1.0) * reach
            );
            if (outline.DistanceToBorder(point) < 1e-9 * reach)
            {
                continue;
            }

            var direction = plane.Unproject(point);
            Assert.Equal(outline.Contains(point), polygon.Contains(direction));
            Assert.False(polygon.Contains(direction.Antipode));
        }
    }

    [Fact]
    public void Contains_PoleAndRightAscensionZeroInside_NeedNoCare()
    {
        var polar = Polygon((10.0, 88.0), (100.0, 87.0), (190.0, 88.5), (280.0, 87.0));
        Assert.True(polar.Contains(SkyDirection.NorthPole));
        Assert.True(polar.Contains(SkyDirection.FromDegrees(0.0, 89.9)));
        Assert.False(polar.Contains(SkyDirection.SouthPole));
        Assert.False(polar.Contains(SkyDirection.FromDegrees(145.0, 86.0)));

        var acrossZero = Polygon((359.0, -1.0), (1.0, -1.0), (1.0, 1.0), (359.0, 1.0));
        Assert.True(acrossZero.Contains(SkyDirection.FromDegrees(0.0, 0.0)));
        Assert.True(acrossZero.Contains(SkyDirection.FromDegrees(359.5, 0.5)));
        Assert.False(acrossZero.Contains(SkyDirection.FromDegrees(180.0, 0.0)));
        Assert.False(acrossZero.Contains(SkyDirection.FromDegrees(1.5, 0.0)));
        Assert.Equal(0.0, acrossZero.Middle.RightAscension.WrappedSigned.Degrees, 1e-12);
    }

    [Theory]
    [InlineData(1.0)]
    [InlineData(60.0)]
    [InlineData(1000.0)]
    public void SmallSquare_AreaMiddleAndInside_KeepTheirDigits(double arcseconds)
    {
        var half = Angle.FromArcseconds(arcseconds / 2.0).Radians;
        foreach (var dec in new[] { 0.0, 45.0, 89.9999, -90.0 })
        {
            var middle = SkyDirection.FromDegrees(123.0, dec);
            var plane = new TangentPlane(middle);
            var polygon = new SkyPolygon([
                plane.Unproject(new(half, half)),
                plane.Unproject(new(half, -half)),
                plane.Unproject(new(-half, -half)),
                plane.Unproject(new(-half, half)),
            ]);

            // The corners themselves are rounded to 1e-16 rad.
            var expected = 4.0 * half * half / (1.0 + (2.0 * half * half));
            Assert.Equal(1.0, polygon.Area.Steradians / expected, 4e-16 / half + (half * half));
            Assert.Equal(0.0, polygon.Middle.SeparationTo(middle).Arcseconds, 1e-6 * arcseconds);

            // A millionth of the square within its sides, and without.
            for (var along = -0.95; along < 1.0; along += 0.1)
            {
                var inner = 0.999999 * half;
                var outer = 1.000001 * half;
                Assert.True(polygon.Contains(plane.Unproject(new(inner, along * half))));
                Assert.True(polygon.Contains(plane.Unproject(new(along * half, -inner))));
                Assert.False(polygon.Contains(plane.Unproject(new(outer, along * half))));
                Assert.False(polygon.Contains(plane.Unproject(new(along * half, -outer))));
            }
        }
    }

    [Fact]
    public void Middle_EitherSideOfTheSmallLimit_IsTheSame()
    {
        // An L of 100 arcsec, just small enough for the plane, and just too large.
        var plane = new TangentPlane(SkyDirection.FromDegrees(10.0, 50.0));
        foreach (var size in new[] { 3.6e-4, 3.9e-4 })
        {
            PlanePoint[] shape =
            [
                new(0.0, 0.0),
                new(2.0, 0.0),
                new(2.0, 1.0),
                new(1.0, 1.0),
                new(1.0, 2.0),
                new(0.0, 2.0),
            ];
            var polygon = new SkyPolygon([.. shape.Select(point => plane.Unproject(point * size))]);

            // Two squares at (0.5, 1.5) and (0.5, 0.5), one at (1.5, 0.5).
            var expected = plane.Unproject(new PlanePoint(2.5 / 3.0, 2.5 / 3.0) * size);
            Assert.Equal(0.0, polygon.Middle.SeparationTo(expected).Radians, 3e-10);
        }
    }

    [Fact]
    public void New_LineOrPoint_HasNoAreaAndItsMiddleInside()
    {
        var line = Polygon((10.0, 0.0), (12.0, 0.0), (14.0, 0.0));
        Assert.Equal(0.0, line.Area.Steradians, 1e-15);
        Assert.Equal(12.0, line.Middle.RightAscension.Degrees, 1e-6);
        var point = Polygon((10.0, 40.0), (10.0, 40.0), (10.0, 40.0));
        Assert.Equal(0.0, point.Area.Steradians);
        Assert.Equal(
            0.0,
            point.Middle.SeparationTo(SkyDirection.FromDegrees(10.0, 40.0)).Arcseconds,
            1e-9
        );
    }

    [Fact]
    public void New_CrossingItself_IsAcceptedWithItsMiddleNear()
    {
        var bowTie = Polygon((10.0, 0.0), (14.0, 3.0), (14.0, 0.0), (10.0, 3.000001));
        Assert.True(bowTie.Radius.Degrees < 10.0);
        Assert.True(bowTie.Contains(SkyDirection.FromDegrees(10.5, 1.5)));
        Assert.True(bowTie.Contains(SkyDirection.FromDegrees(13.5, 1.5)));
        Assert.False(bowTie.Contains(SkyDirection.FromDegrees(12.0, 2.5)));
    }

    [Fact]
    public void New_NoPolygon_Refused()
    {
        Assert.Throws<ArgumentException>(() => Polygon((1.0, 2.0), (3.0, 4.0)));
        Assert.Throws<ArgumentException>(() =>
            new SkyPolygon([SkyDirection.NorthPole, default, SkyDirection.FromDegrees(1.0, 1.0)])
        );
        Assert.Throws<ArgumentException>(() => Polygon((0.0, 0.0), (120.0, 0.0), (240.0, 0.0)));
        Assert.Throws<ArgumentException>(() =>
            Polygon((0.0, -10.0), (120.0, -10.0), (240.0, -10.0), (0.0, 80.0), (180.0, 0.0))
        );
    }

    private static SkyPolygon Polygon(params (double Ra, double Dec)[] corners) =>
        new([.. corners.Select(corner => SkyDirection.FromDegrees(corner.Ra, corner.Dec))]);

    private static List<SkyDirection> Ring(SkyDirection centre, Angle radius, int sides) =>
        [
            .. Enumerable
                .Range(0, sides)
                .Select(i => centre.Offset(PositionAngle.FromDegrees(360.0 * i / sides), radius)),
        ];

    /// <summary>From an arcminute to 60 degrees, small ones as often as large ones.</summary>
    private static double Reach(Random random) => 3e-4 * Math.Pow(6000.0, random.NextDouble());

    private static List<SkyDirection> Convex(Random random, SkyDirection middle)
    {
        var radius = Angle.FromDegrees(0.1 + (60.0 * random.NextDouble()));
        var count = random.Next(4, 12);
        return
        [
            .. Enumerable
                .Range(0, count)
                .Select(i => (i + (0.8 * random.NextDouble())) * 360.0 / count)
                .Select(degrees => middle.Offset(PositionAngle.FromDegrees(degrees), radius)),
        ];
    }

    private static IEnumerable<SkyDirection> Around(Random random, SkyDirection middle, int count)
    {
        for (var i = 0; i < count; i++)
        {
            yield return middle.Offset(
                PositionAngle.FromDegrees(360.0 * random.NextDouble()),
                Angle.FromDegrees(180.0 * random.NextDouble())
            );
        }
    }
}
