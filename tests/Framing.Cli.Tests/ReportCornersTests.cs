using System.Globalization;

namespace Framing.Cli.Tests;

/// <summary>
/// The corners that a report prints against those of wcslib (astropy 5.2.1), fed with the centres and angles that the
/// report prints. Made by tests/reference/report-corners.
/// </summary>
public sealed class ReportCornersTests
{
    private static readonly ILookup<string, string[]> Answers = File.ReadLines(
            Checkout.At("tests/Framing.Cli.Tests/Data/report-corners.csv")
        )
        .Skip(1)
        .Select(line => line.Split(','))
        .ToLookup(row => row[0]);

    [Fact]
    public void Answers_AreThere() =>
        Assert.Equal(
            ["mirrored", "polar", "single-frame", "six-panels", "two-panels"],
            Answers.Select(plan => plan.Key).Order(StringComparer.Ordinal)
        );

    [Theory]
    [InlineData("samples/single-frame.toml", 1)]
    [InlineData("samples/two-panels.toml", 2)]
    [InlineData("samples/six-panels.toml", 6)]
    [InlineData("tests/Framing.Cli.Tests/Data/mirrored.toml", 4)]
    [InlineData("tests/Framing.Cli.Tests/Data/polar.toml", 6)]
    public void Corners_OfEveryPanel_AreThoseOfAReferenceLibrary(string plan, int panels)
    {
        using var session = new Session();
        Assert.Equal(0, session.Run("plan", Checkout.At(plan), "--out", "out").Code);
        var report = session.Json("out/report.json").GetProperty("panels");
        Assert.Equal(panels, report.GetArrayLength());
        var read = 0;

        foreach (var row in Answers[Path.GetFileNameWithoutExtension(plan)])
        {
            var panel = report[int.Parse(row[1], CultureInfo.InvariantCulture) - 1];

            // The comparison is honest only while the library was fed with the very pose that is reported.
            var centre = panel.GetProperty("centre");
            Assert.Equal(Number(row[2]), centre.GetProperty("raDeg").GetDouble(), 1e-9);
            Assert.Equal(Number(row[3]), centre.GetProperty("decDeg").GetDouble(), 1e-9);
            Assert.Equal(Number(row[4]), panel.GetProperty("positionAngleDeg").GetDouble(), 1e-9);

            var corners = panel.GetProperty("cornersDeg");
            Assert.Equal(4, corners.GetArrayLength());
            var corner = corners[int.Parse(row[5], CultureInfo.InvariantCulture) - 1];
            Assert.InRange(
                ArcsecondsBetween(
                    Vector(Number(row[6]), Number(row[7])),
                    Vector(corner[0].GetDouble(), corner[1].GetDouble())
                ),
                0.0,
                0.001
            );
            read++;
        }

        Assert.Equal(4 * panels, read);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static (double X, double Y, double Z) Vector(double ra, double dec)
    {
        var (sinRa, cosRa) = Math.SinCos(double.DegreesToRadians(ra));
        var (sinDec, cosDec) = Math.SinCos(double.DegreesToRadians(dec));
        return (cosDec * cosRa, cosDec * sinRa, sinDec);
    }

    /// <summary>Along the great circle; by the chord, which stays exact for small distances.</summary>
    private static double ArcsecondsBetween(
        (double X, double Y, double Z) a,
        (double X, double Y, double Z) b
    )
    {
        var chord = Math.Sqrt(
            Math.Pow(a.X - b.X, 2) + Math.Pow(a.Y - b.Y, 2) + Math.Pow(a.Z - b.Z, 2)
        );
        return double.RadiansToDegrees(2.0 * Math.Asin(chord / 2.0)) * 3600.0;
    }
}
