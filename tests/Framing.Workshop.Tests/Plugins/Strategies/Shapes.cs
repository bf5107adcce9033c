using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Workshop.Tests;

/// <summary>Outlines and cameras for the strategies' tests.</summary>
internal static class Shapes
{
    /// <summary>4144 x 2822 px of 4.63 um at 250 mm: 4.39 by 2.99 degrees.</summary>
    public static Rig Wide { get; } = new(250.0, new Sensor(4144, 2822, 4.63));

    /// <summary>The same sensor on its side.</summary>
    public static Rig Tall { get; } = new(250.0, new Sensor(2822, 4144, 4.63));

    /// <summary>A frame of 4.5 by 3.0 degrees in the tangent plane: 4500 x 3000 px, a thousandth of a degree each.</summary>
    public static Rig FourAndAHalfByThree { get; } =
        new(1000.0 * 180.0 / Math.PI, new Sensor(4500, 3000, 1000.0));

    /// <summary>
    /// Two neighbouring round nebulae and a small one, far north. Places and sizes from memory, rounded: they only have to
    /// be a likely target.
    /// </summary>
    public static SkyOutline Group { get; } =
        SkyOutline.Together([
            Round(38.2, 61.5, 75.0),
            SkyOutline.Ellipse(
                SkyDirection.FromDegrees(42.8, 60.4),
                Angle.FromArcminutes(100.0),
                Angle.FromArcminutes(50.0),
                PositionAngle.FromDegrees(75.0)
            ),
            Round(36.4, 62.1, 20.0),
        ]);

    public static SkyOutline Round(double ra, double dec, double arcminutes) =>
        SkyOutline.Ellipse(
            SkyDirection.FromDegrees(ra, dec),
            Angle.FromArcminutes(arcminutes),
            Angle.FromArcminutes(arcminutes),
            PositionAngle.North
        );

    public static SkyOutline Strip(
        double ra,
        double dec,
        double length,
        double breadth,
        double along
    ) =>
        SkyOutline.Rectangle(
            SkyDirection.FromDegrees(ra, dec),
            Angle.FromDegrees(length),
            Angle.FromDegrees(breadth),
            PositionAngle.FromDegrees(along)
        );

    /// <summary>A polygon of 3 to 8 corners strewn over an ellipse, anywhere between the poles.</summary>
    public static SkyOutline Strewn(Random random, double smallestDegrees, double largestDegrees)
    {
        var centre = SkyDirection.FromDegrees(
            360.0 * random.NextDouble(),
            Math.Asin((2.0 * random.NextDouble()) - 1.0) * 180.0 / Math.PI
        );
        var plane = new TangentPlane(centre);
        var length = smallestDegrees + ((largestDegrees - smallestDegrees) * random.NextDouble());
        var breadth = length * (0.1 + (0.9 * random.NextDouble()));
        var (sin, cos) = Math.SinCos(Math.PI * random.NextDouble());
        var corners = Enumerable
            .Range(0, random.Next(3, 9))
            .Select(_ => Math.Tau * random.NextDouble())
            .Order()
            .Select(turn =>
            {
                var a = length * Math.Cos(turn) * Math.PI / 360.0;
                var b = breadth * Math.Sin(turn) * Math.PI / 360.0;
                return plane.Unproject(new((a * cos) - (b * sin), (a * sin) + (b * cos)));
            })
            .ToList();
        return new([new SkyPolygon(corners)]);
    }

    public static PositionAngle? Angle360(double? degrees) =>
        degrees is { } value ? PositionAngle.FromDegrees(value) : null;
}
