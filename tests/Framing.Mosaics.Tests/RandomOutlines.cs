using Framing.Sky;

namespace Framing.Mosaics.Tests;

/// <summary>Outlines of many shapes, the same on every run for the same seed.</summary>
internal static class RandomOutlines
{
    /// <summary>Points of about unit size about a random middle.</summary>
    public static PlanePoint[] PlanePoints(Random random)
    {
        var shape = random.Next(8) switch
        {
            0 => Cloud(random, 1),
            1 => Cloud(random, 2),
            2 => Cloud(random, 3),
            3 => Ellipse(random, random.Next(5, 97)),
            4 => Ridge(random),
            5 => Rectangle(random),
            6 => [.. Shift(Ellipse(random, 24), random), .. Shift(Cloud(random, 5), random)],
            _ => Cloud(random, random.Next(4, 40)),
        };
        return Shift(shape, random);
    }

    /// <summary>An outline anywhere on the sky, from a few seconds of arc to some 35° in radius.</summary>
    public static SkyOutline OnTheSky(Random random)
    {
        var centre = Anywhere(random);
        var plane = new TangentPlane(centre);
        var size = 0.7 * Math.Pow(10.0, -4.5 * random.NextDouble() * random.NextDouble()) / 2.5;
        SkyPolygon[] areas =
        [
            .. Enumerable
                .Range(0, random.Next(5) == 0 ? 2 : 1)
                .Select(_ => Area(random, plane, size)),
        ];
        return new(areas);
    }

    public static SkyDirection Anywhere(Random random)
    {
        // Uniform on the sphere, but one in eight close to a pole.
        var z = (2.0 * random.NextDouble()) - 1.0;
        if (random.Next(8) == 0)
        {
            z = Math.Sign(z) * (1.0 - (0.002 * random.NextDouble()));
        }

        var alpha = Math.Tau * random.NextDouble();
        var r = Math.Sqrt(1.0 - (z * z));
        return SkyDirection.FromVector(new(r * Math.Cos(alpha), r * Math.Sin(alpha), z));
    }

    private static SkyPolygon Area(Random random, TangentPlane plane, double size)
    {
        SkyDirection[] corners =
        [
            .. PlanePoints(random).Select(point => plane.Unproject(point * size)),
        ];

        // A point and a line are polygons without area.
        return new(corners.Length >= 3 ? corners : [.. corners, .. corners, .. corners]);
    }

    private static PlanePoint[] Shift(PlanePoint[] points, Random random)
    {
        var by = new PlanePoint(random.NextDouble() - 0.5, random.NextDouble() - 0.5);
        return [.. points.Select(point => point + by)];
    }

    /// <summary>Random points, in order round their middle so that the line through them does not cross itself.</summary>
    private static PlanePoint[] Cloud(Random random, int count) =>
        [
            .. Enumerable
                .Range(0, count)
                .Select(_ => new PlanePoint(random.NextDouble() - 0.5, random.NextDouble() - 0.5))
                .OrderBy(point => Math.Atan2(point.Eta, point.Xi)),
        ];

    private static PlanePoint[] Ellipse(Random random, int count)
    {
        var (a, b) = (0.1 + random.NextDouble(), 0.02 + random.NextDouble());
        var (sin, cos) = Math.SinCos(Math.PI * random.NextDouble());
        return
        [
            .. Enumerable
                .Range(0, count)
                .Select(i =>
                {
                    var (s, c) = Math.SinCos(Math.Tau * i / count);
                    return new PlanePoint(
                        (a * c * cos) - (b * s * sin),
                        (a * c * sin) + (b * s * cos)
                    );
                }),
        ];
    }

    private static PlanePoint[] Rectangle(Random random)
    {
        var (a, b) = (0.1 + random.NextDouble(), 0.1 + random.NextDouble());
        var (sin, cos) = Math.SinCos(Math.PI * random.NextDouble());
        return
        [
            .. new (double X, double Y)[] { (-1, -1), (1, -1), (1, 1), (-1, 1) }.Select(
                p => new PlanePoint(
                    (a * p.X * cos) - (b * p.Y * sin),
                    (a * p.X * sin) + (b * p.Y * cos)
                )
            ),
        ];
    }

    /// <summary>A bent band: out along one side and back along the other.</summary>
    private static PlanePoint[] Ridge(Random random)
    {
        var bend = 3.0 * (random.NextDouble() - 0.5);
        var breadth = 0.02 + (0.2 * random.NextDouble());
        var count = random.Next(3, 15);
        var there = Enumerable.Range(0, count).Select(i => Place((double)i / (count - 1), breadth));
        var back = Enumerable
            .Range(0, count)
            .Select(i => Place(1.0 - ((double)i / (count - 1)), -breadth));
        return [.. there, .. back];

        PlanePoint Place(double along, double across)
        {
            var x = (2.0 * along) - 1.0;
            return new(x, (bend * x * x) + across + (0.03 * random.NextDouble()));
        }
    }
}
