using System.Globalization;
using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Workshop.Tests;

public sealed class AxesTests
{
    [Theory]
    [InlineData("north-up", 0.0)]
    [InlineData("east-up", 90.0)]
    public void Choose_NorthOrEastUp_IsThatWhateverThePresentAngle(string name, double expected) =>
        Assert.Equal(
            expected,
            Ask.Degrees(name, Questions.Rotation(present: PositionAngle.FromDegrees(200.0))),
            12
        );

    [Theory]
    [InlineData("right-ascension", null, 0.0)]
    [InlineData("right-ascension", 80.0, 0.0)]
    [InlineData("right-ascension", 100.0, 180.0)]
    [InlineData("right-ascension", 260.0, 180.0)]
    [InlineData("right-ascension", 280.0, 0.0)]
    [InlineData("declination", null, 90.0)]
    [InlineData("declination", 10.0, 90.0)]
    [InlineData("declination", 350.0, 270.0)]
    public void Choose_AlongDrift_TakesTheNearerOfOpposites(
        string rows,
        double? present,
        double expected
    ) =>
        Assert.Equal(
            expected,
            Ask.Degrees(
                "along-drift",
                Questions.Rotation(present: Shapes.Angle360(present)),
                ("rows", rows)
            ),
            12
        );

    [Fact]
    public void Choose_AlongGalacticPlane_AgreesWithErfa()
    {
        var rows = Data("galactic-north.csv");
        Assert.Equal(60, rows.Count);
        foreach (var (ra, dec, pa) in rows)
        {
            var question = Questions.Rotation(Shapes.Round(ra, dec, 60.0));
            var north = pa % 180.0;

            // Up towards the galactic pole lays the long side of a wide sensor along the plane.
            AssertSameFrame(north, Ask.Degrees("along-galactic-plane", question));
            AssertSameFrame(
                north + 90.0,
                Ask.Degrees("along-galactic-plane", question, ("side", "short"))
            );
            AssertSameFrame(
                north + 90.0,
                Ask.Degrees("along-galactic-plane", question with { Rig = Shapes.Tall })
            );

            // Of the two opposite angles the nearer to the present one.
            var present = PositionAngle.FromDegrees(pa + 60.0);
            Assert.Equal(
                pa,
                Ask.Degrees("along-galactic-plane", question with { PresentCameraAngle = present }),
                6
            );
        }
    }

    [Fact]
    public void Choose_AlongGalacticPlane_HoldsAtTheMiddleOfTheFrame()
    {
        // The middle of this frame lies 4 degrees from that of the areas, where the plane runs otherwise.
        var outline = SkyOutline.Together([
            Shapes.Round(305.0, 40.0, 300.0),
            Shapes.Round(318.0, 46.0, 10.0),
        ]);
        var pole = SkyDirection.FromDegrees(192.85948, 27.12825);

        var up = Ask.Degrees("along-galactic-plane", Questions.Rotation(outline));

        var middle = Extent.Of(outline, up).Centre;
        AssertSameFrame(middle.PositionAngleTo(pole).Degrees, up, 1e-9);
        Assert.True(middle.SeparationTo(outline.Middle).Degrees > 1.0);
    }

    [Theory]
    [InlineData(192.85948, 27.12825)]
    [InlineData(12.85948, -27.12825)]
    public void Choose_AlongGalacticPlaneAtItsPole_RefusesInWords(double ra, double dec)
    {
        var answer = Ask.Rotation(
            "along-galactic-plane",
            Questions.Rotation(Shapes.Round(ra, dec, 60.0))
        );

        Assert.Null(answer.Angle);
        Assert.Equal(
            "along-galactic-plane has no answer at a galactic pole; take north-up or to-outline",
            answer.Reason
        );
    }

    private static void AssertSameFrame(double expected, double actual, double tolerance = 1e-6) =>
        Assert.InRange(Math.Abs(Math.IEEERemainder(actual - expected, 180.0)), 0.0, tolerance);

    private static List<(double Ra, double Dec, double Pa)> Data(string name)
    {
        using var stream = typeof(AxesTests).Assembly.GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream);
        Assert.Equal("ra_deg,dec_deg,galactic_north_pa_deg", reader.ReadLine());
        var rows = new List<(double, double, double)>();
        while (reader.ReadLine() is { } line)
        {
            var cells = Array.ConvertAll(
                line.Split(','),
                cell => double.Parse(cell, CultureInfo.InvariantCulture)
            );
            rows.Add((cells[0], cells[1], cells[2]));
        }

        return rows;
    }
}
