using Framing.Sky;

namespace Framing.Mosaics.Tests;

/// <summary>
/// Measures outlines in frames on its own: right ascension and declination in, plain dot products with axes made from
/// them, nothing of the code under test.
/// </summary>
internal static class OutlineMeasure
{
    /// <summary>Where the corners stand in the plane of a pose: along the width (through east at angle 0) and the height.</summary>
    public static (double[] U, double[] V) Offsets(SkyOutline outline, CameraPose pose)
    {
        var axes = Axes(pose);
        var corners = Corners(outline);
        return (
            [.. corners.Select(p => Dot(p, axes.X) / Dot(p, axes.Z))],
            [.. corners.Select(p => Dot(p, axes.Y) / Dot(p, axes.Z))]
        );
    }

    /// <summary>Where one direction stands in the plane of a pose.</summary>
    public static (double U, double V) Offset(SkyDirection at, CameraPose pose)
    {
        var axes = Axes(pose);
        var p = Vector(at.RightAscension.Radians, at.Declination.Radians);
        return (Dot(p, axes.X) / Dot(p, axes.Z), Dot(p, axes.Y) / Dot(p, axes.Z));
    }

    /// <summary>The margin of a frame at a pose: the least distance of any corner from any side.</summary>
    public static double Margin(SkyOutline outline, FieldShape field, CameraPose pose) =>
        Margin(Corners(outline), field, Axes(pose));

    /// <summary>Twice the farthest reach along the height after centring, for a width at an angle from east.</summary>
    public static double Breadth(SkyOutline outline, SkyDirection start, double theta)
    {
        var corners = Corners(outline);
        var axes = Centred(corners, Turned(Axes(new(start, PositionAngle.North)), theta), 8);
        return 2.0 * corners.Max(p => Math.Abs(Dot(p, axes.Y) / Dot(p, axes.Z)));
    }

    /// <summary>The best margin that many angles and a refinement about the best ones find.</summary>
    public static double DenseSearch(SkyOutline outline, FieldShape field, SkyDirection start)
    {
        const int Angles = 180;
        const double Step = Math.PI / Angles;
        var corners = Corners(outline);
        var plane = Centred(corners, Axes(new(start, PositionAngle.North)), 2);

        // One projection for all angles; the angles worth more are climbed in planes of their own.
        var flat = corners
            .Select(p =>
                (U: Dot(p, plane.X) / Dot(p, plane.Z), V: Dot(p, plane.Y) / Dot(p, plane.Z))
            )
            .ToArray();
        var margins = new double[Angles];
        for (var i = 0; i < Angles; i++)
        {
            double cos = Math.Cos(i * Step),
                sin = Math.Sin(i * Step);
            double left = 9e9,
                right = -9e9,
                bottom = 9e9,
                top = -9e9;
            foreach (var (x, y) in flat)
            {
                double u = (x * cos) + (y * sin),
                    v = (y * cos) - (x * sin);
                left = u < left ? u : left;
                right = u > right ? u : right;
                bottom = v < bottom ? v : bottom;
                top = v > top ? v : top;
            }

            margins[i] = Math.Min(
                field.TangentWidth - right + left,
                field.TangentHeight - top + bottom
            );
        }

        var hills = Enumerable
            .Range(0, Angles)
            .Where(i => margins[i] >= margins[(i + 1) % Angles])
            .Where(i => margins[i] >= margins[(i + Angles - 1) % Angles])
            .OrderByDescending(i => margins[i])
            .Take(2);
        return hills.Max(i => Climb(corners, field, plane, (i - 1) * Step, (i + 1) * Step));
    }

    private static double Climb(
        (double X, double Y, double Z)[] corners,
        FieldShape field,
        Basis plane,
        double low,
        double high
    )
    {
        const double Golden = 0.6180339887498949;
        double At(double theta) =>
            Margin(corners, field, Centred(corners, Turned(plane, theta), 5));
        double a = high - (Golden * (high - low)),
            b = low + (Golden * (high - low));
        double atA = At(a),
            atB = At(b);
        var best = Math.Max(atA, atB);
        for (var round = 0; round < 30; round++)
        {
            if (atA > atB)
            {
                (high, b, atB) = (b, a, atA);
                a = high - (Golden * (high - low));
                atA = At(a);
            }
            else
            {
                (low, a, atA) = (a, b, atB);
                b = low + (Golden * (high - low));
                atB = At(b);
            }

            best = Math.Max(best, Math.Max(atA, atB));
        }

        return best;
    }

    /// <summary>Moves a frame to the middle of the box round the corners, again and again.</summary>
    private static Basis Centred((double X, double Y, double Z)[] corners, Basis axes, int rounds)
    {
        for (var i = 0; i < rounds; i++)
        {
            var (r, t, l, b) = Box(corners, axes);

            // The plane stretches outwards: the step that balances the reach on the sphere is shorter than the middle.
            double u = (r + l) / (2.0 + (r * r) + (l * l)),
                v = (t + b) / (2.0 + (t * t) + (b * b));
            var z = Unit(Sum(axes.Z, axes.X, u, axes.Y, v));
            var x = Unit(Sum(axes.X, z, -Dot(axes.X, z), z, 0.0));
            axes = new(x, Cross(z, x), z);
        }

        return axes;
    }

    private static (double Right, double Top, double Left, double Bottom) Box(
        (double X, double Y, double Z)[] corners,
        Basis axes
    )
    {
        double right = double.NegativeInfinity,
            top = double.NegativeInfinity,
            left = double.PositiveInfinity,
            bottom = double.PositiveInfinity;
        foreach (var p in corners)
        {
            var depth = Dot(p, axes.Z);
            double u = Dot(p, axes.X) / depth,
                v = Dot(p, axes.Y) / depth;
            left = u < left ? u : left;
            right = u > right ? u : right;
            bottom = v < bottom ? v : bottom;
            top = v > top ? v : top;
        }

        return (right, top, left, bottom);
    }

    private static double Margin(
        (double X, double Y, double Z)[] corners,
        FieldShape field,
        Basis axes
    )
    {
        var (r, t, l, b) = Box(corners, axes);
        return Math.Min(
            (field.TangentWidth / 2.0) - Math.Max(r, -l),
            (field.TangentHeight / 2.0) - Math.Max(t, -b)
        );
    }

    private static Basis Axes(CameraPose pose)
    {
        double a = pose.Centre.RightAscension.Radians,
            d = pose.Centre.Declination.Radians,
            pa = pose.PositionAngle.Radians;
        var east = (-Math.Sin(a), Math.Cos(a), 0.0);
        var north = (-Math.Sin(d) * Math.Cos(a), -Math.Sin(d) * Math.Sin(a), Math.Cos(d));
        var zero = (0.0, 0.0, 0.0);
        return new(
            Sum(zero, east, Math.Cos(pa), north, -Math.Sin(pa)),
            Sum(zero, east, Math.Sin(pa), north, Math.Cos(pa)),
            Vector(a, d)
        );
    }

    private static Basis Turned(Basis axes, double theta)
    {
        var zero = (0.0, 0.0, 0.0);
        return new(
            Sum(zero, axes.X, Math.Cos(theta), axes.Y, Math.Sin(theta)),
            Sum(zero, axes.X, -Math.Sin(theta), axes.Y, Math.Cos(theta)),
            axes.Z
        );
    }

    private static (double X, double Y, double Z)[] Corners(SkyOutline outline) =>
        [
            .. outline.Corners.Select(corner =>
                Vector(corner.RightAscension.Radians, corner.Declination.Radians)
            ),
        ];

    private static (double X, double Y, double Z) Vector(double ra, double dec) =>
        (Math.Cos(dec) * Math.Cos(ra), Math.Cos(dec) * Math.Sin(ra), Math.Sin(dec));

    private static double Dot((double X, double Y, double Z) a, (double X, double Y, double Z) b) =>
        (a.X * b.X) + (a.Y * b.Y) + (a.Z * b.Z);

    private static (double X, double Y, double Z) Cross(
        (double X, double Y, double Z) a,
        (double X, double Y, double Z) b
    ) => ((a.Y * b.Z) - (a.Z * b.Y), (a.Z * b.X) - (a.X * b.Z), (a.X * b.Y) - (a.Y * b.X));

    private static (double X, double Y, double Z) Sum(
        (double X, double Y, double Z) a,
        (double X, double Y, double Z) b,
        double byB,
        (double X, double Y, double Z) c,
        double byC
    ) =>
        (
            a.X + (b.X * byB) + (c.X * byC),
            a.Y + (b.Y * byB) + (c.Y * byC),
            a.Z + (b.Z * byB) + (c.Z * byC)
        );

    private static (double X, double Y, double Z) Unit((double X, double Y, double Z) a)
    {
        var length = Math.Sqrt(Dot(a, a));
        return (a.X / length, a.Y / length, a.Z / length);
    }

    private readonly record struct Basis(
        (double X, double Y, double Z) X,
        (double X, double Y, double Z) Y,
        (double X, double Y, double Z) Z
    );
}
