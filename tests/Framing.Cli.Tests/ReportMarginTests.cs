using System.Globalization;
using System.Text;
using System.Text.Json;
using Framing.Catalogue;
using Framing.Planning;

namespace Framing.Cli.Tests;

/// <summary>
/// The margin that a report prints, measured again from the centre, the angle and the overlap that it prints, with plain
/// dot products and nothing of the code that found it.
/// </summary>
public sealed class ReportMarginTests
{
    private const double ArcminutesPerRadian = 60.0 * 180.0 / Math.PI;
    private const double SensorWidthMm = 4144 * 0.00463;
    private const double SensorHeightMm = 2822 * 0.00463;

    /// <summary>The report's last digit, for the margin and the overlap that goes into it.</summary>
    private const double Rounding = 2e-6;

    [Theory]
    [InlineData("samples/single-frame.toml", "NGC 1499")]
    [InlineData("samples/two-panels.toml", "IC 1805", "IC 1848", "HB 3")]
    public void Margin_OfASampleWithNames_IsThatOfTheirOutlines(string plan, params string[] names)
    {
        using var session = new Session();
        var report = session.Run("plan", Checkout.At(plan), "--json", "--out", "out").Json();
        var target = TargetBuilder.FromEntries(
            [.. names.Select(name => (ObjectCatalogue.Embedded.Find(name).Entry!, name))],
            _ => null,
            2027.0
        );

        var measured = Measured(
            report,
            [
                .. target.Outline.Corners.Select(corner =>
                    (corner.RightAscension.Degrees, corner.Declination.Degrees)
                ),
            ]
        );

        Assert.Equal(measured, Reported(report), Rounding);
    }

    [Fact]
    public void Margin_OfTheSampleWithABox_IsThatOfItsCorners()
    {
        // samples/six-panels.toml: 112′ east to west by 106′ about 22h 13m, +70.1°, north up, so that a corner stands at
        // tan(56′), tan(53′) from the middle in the plane that touches there.
        using var session = new Session();
        var report = session
            .Run("plan", Checkout.At("samples/six-panels.toml"), "--json", "--out", "out")
            .Json();
        var (x, y, z) = Axes(333.25, 70.1, 0.0);
        double across = Math.Tan(56.0 / ArcminutesPerRadian),
            up = Math.Tan(53.0 / ArcminutesPerRadian);
        (double, double)[] corners =
        [
            .. new[] { (-1, -1), (1, -1), (1, 1), (-1, 1) }.Select(sign =>
                Direction(Sum(z, x, sign.Item1 * across, y, sign.Item2 * up))
            ),
        ];

        Assert.Equal(Measured(report, corners), Reported(report), Rounding);
    }

    [Theory]
    [InlineData(1, 12.0, 3.0)]
    [InlineData(2, 85.0, 9.0)]
    [InlineData(3, -89.0, 4.0)]
    [InlineData(4, -30.0, 0.4)]
    [InlineData(5, 60.0, 14.0)]
    public void Margin_OfRandomOutlines_IsThatOfTheirCorners(
        int seed,
        double declination,
        double size
    )
    {
        var random = new Random(seed);
        var (x, y, z) = Axes(360.0 * random.NextDouble(), declination, 0.0);
        var half = Math.Tan(double.DegreesToRadians(size / 2.0));
        (double Ra, double Dec)[] corners =
        [
            .. Enumerable
                .Range(0, 9)
                .Select(i => (Math.Tau * (i + random.NextDouble()) / 9.0, random.NextDouble()))
                .Select(at =>
                    Direction(
                        Sum(
                            z,
                            x,
                            half * (0.2 + (0.8 * at.Item2)) * Math.Cos(at.Item1),
                            y,
                            0.5 * half * (0.2 + (0.8 * at.Item2)) * Math.Sin(at.Item1)
                        )
                    )
                ),
        ];
        using var session = new Session();
        var table = new StringBuilder("ra_deg,dec_deg\n");
        foreach (var (ra, dec) in corners)
        {
            table.Append(CultureInfo.InvariantCulture, $"{ra:R},{dec:R}\n");
        }

        session.Write("ridge.csv", table.ToString());
        var plan = session.Write(
            "plan.toml",
            """
            [rig]
            focal_length_mm = 250
            sensor_px = [4144, 2822]
            pixel_um = 4.63

            [target]
            outline = "ridge.csv"

            [rotation]
            strategy = "to-outline"

            [night]
            date = 2026-12-05

            """
        );

        var outcome = session.Run("plan", plan, "--json", "--size", "320x200");

        Assert.Equal(0, outcome.Code);
        var report = outcome.Json();
        var found = Reported(report);
        Assert.Equal(Measured(report, corners), found, Rounding);

        // The strategy promises the largest margin: no other angle about the same centre leaves more on all sides.
        var angle = report.GetProperty("rotation").GetProperty("positionAngleDeg").GetDouble();
        for (var turn = 1; turn < 360; turn++)
        {
            Assert.True(Measured(report, corners, angle + (0.5 * turn)) <= found + Rounding);
        }
    }

    private static double Reported(JsonElement report) =>
        report.GetProperty("rotation").GetProperty("marginArcmin").GetDouble();

    /// <summary>The least distance of any corner from any side of all panels as one frame, in the plane of its centre.</summary>
    private static double Measured(
        JsonElement report,
        (double Ra, double Dec)[] corners,
        double? angle = null
    )
    {
        var focal = report.GetProperty("rig").GetProperty("focalLengthMm").GetDouble();
        var mosaic = report.GetProperty("mosaic");
        var centre = mosaic.GetProperty("centre");
        var (x, y, z) = Axes(
            centre.GetProperty("raDeg").GetDouble(),
            centre.GetProperty("decDeg").GetDouble(),
            angle ?? report.GetProperty("rotation").GetProperty("positionAngleDeg").GetDouble()
        );
        var halfWidth = Side(SensorWidthMm / focal, mosaic.GetProperty("columns").GetInt32(), 0);
        var halfHeight = Side(SensorHeightMm / focal, mosaic.GetProperty("rows").GetInt32(), 1);
        return ArcminutesPerRadian
            * corners
                .Select(corner => Vector(corner.Ra, corner.Dec))
                .Min(p =>
                    Math.Min(
                        halfWidth - Math.Abs(Dot(p, x) / Dot(p, z)),
                        halfHeight - Math.Abs(Dot(p, y) / Dot(p, z))
                    )
                );

        double Side(double panel, int count, int axis)
        {
            var shared =
                count == 1
                    ? 0.0
                    : mosaic.GetProperty("overlapArcmin")[axis].GetDouble() / ArcminutesPerRadian;
            return ((count * panel) - ((count - 1) * shared)) / 2.0;
        }
    }

    /// <summary>To the left in the picture, up in the picture, and towards its middle; north through east.</summary>
    private static (
        (double X, double Y, double Z) X,
        (double X, double Y, double Z) Y,
        (double X, double Y, double Z) Z
    ) Axes(double ra, double dec, double angle)
    {
        var (sin, cos) = Math.SinCos(double.DegreesToRadians(angle));
        var (sinRa, cosRa) = Math.SinCos(double.DegreesToRadians(ra));
        var (sinDec, cosDec) = Math.SinCos(double.DegreesToRadians(dec));
        var east = (-sinRa, cosRa, 0.0);
        var north = (-sinDec * cosRa, -sinDec * sinRa, cosDec);
        var zero = (0.0, 0.0, 0.0);
        return (
            Sum(zero, east, cos, north, -sin),
            Sum(zero, east, sin, north, cos),
            Vector(ra, dec)
        );
    }

    private static (double Ra, double Dec) Direction((double X, double Y, double Z) v)
    {
        var ra = double.RadiansToDegrees(Math.Atan2(v.Y, v.X));
        return (
            ra < 0.0 ? ra + 360.0 : ra,
            double.RadiansToDegrees(Math.Atan2(v.Z, double.Hypot(v.X, v.Y)))
        );
    }

    private static (double X, double Y, double Z) Vector(double ra, double dec)
    {
        var (sinRa, cosRa) = Math.SinCos(double.DegreesToRadians(ra));
        var (sinDec, cosDec) = Math.SinCos(double.DegreesToRadians(dec));
        return (cosDec * cosRa, cosDec * sinRa, sinDec);
    }

    private static double Dot((double X, double Y, double Z) a, (double X, double Y, double Z) b) =>
        (a.X * b.X) + (a.Y * b.Y) + (a.Z * b.Z);

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
}
