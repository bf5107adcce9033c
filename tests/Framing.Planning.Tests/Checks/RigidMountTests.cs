using System.Text.Json;
using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Planning.Tests;

/// <summary>
/// A camera carried about the pole of date by a rigid mount, worked in vectors with ERFA (tests/reference/mount): 120 pairs of
/// panels, 80 of them about declination ±88°.
/// </summary>
public sealed class RigidMountTests
{
    /// <summary>Degrees. Within 2° of a pole a position angle turns by as much as right ascension does.</summary>
    private const double Tolerance = 0.01;

    private static readonly List<JsonElement> Cases = Read();

    [Fact]
    public void File_AsRead_HoldsEveryCase() => Assert.Equal(120, Cases.Count);

    [Fact]
    public void Frame_TwoPanelsCameraLeftAlone_StandAsTheMountCarriesIt()
    {
        // Every fourth: a framing draws its chances of a gap, too.
        foreach (var entry in Cases.Where((_, i) => i % 4 == 0))
        {
            var centre = Place(entry);
            var angle = Number(entry, "positionAngleDeg");
            var request = Requests.Of(
                Requests.Box(Number(entry, "raDeg"), Number(entry, "decDeg"), 1.0, 1.0, 0.0),
                new Requests.Turn(angle),
                new Requests.Share(0.15),
                GridWish.Fixed(2, 1)
            ) with
            {
                FixedCentre = centre,
                At = Utc(entry),
            };
            var panels = Requests.Framed(request).Panels;
            var expected = entry.GetProperty("panels").EnumerateArray().ToList();
            for (var i = 0; i < 2; i++)
            {
                // The left panel of the displayed mosaic is the first; the case counts from the left, too.
                Assert.InRange(
                    panels[i].Centre.SeparationTo(Place(expected[i])).Arcseconds,
                    0.0,
                    0.1
                );
                Assert.InRange(
                    panels[i].PositionAngle.TurnTo(Angle(expected[i])).Magnitude.Degrees,
                    0.0,
                    Tolerance
                );
            }
        }
    }

    [Fact]
    public void Check_CameraLeftAloneWhileTheMountMoves_NeedsNoTurn()
    {
        var most = 0.0;
        foreach (var entry in Cases)
        {
            foreach (var panel in entry.GetProperty("panels").EnumerateArray())
            {
                var plan = Checks.PlanAt(Place(panel), Number(panel, "positionAngleDeg"));
                var frame = Checks.Frame(plan, Place(entry), Number(entry, "positionAngleDeg")) with
                {
                    At = Utc(entry),
                };
                var check = Checks.Check(plan, frame);
                Assert.InRange(check.TurnCamera.Magnitude.Degrees, 0.0, Tolerance);
                most = Math.Max(
                    most,
                    frame
                        .Pose.PositionAngle.FrameTurnTo(plan.Panels[0].PositionAngle)
                        .Magnitude.Degrees
                );
            }
        }

        // Against J2000 north the same camera seems to turn by up to a quarter: the test would see it.
        Assert.True(most > 10.0);
    }

    private static PositionAngle Angle(JsonElement pose) =>
        PositionAngle.FromDegrees(Number(pose, "positionAngleDeg"));

    private static SkyDirection Place(JsonElement pose) =>
        SkyDirection.FromDegrees(Number(pose, "raDeg"), Number(pose, "decDeg"));

    /// <summary>UTC, 69.184 s behind terrestrial time (32.184 s and 37 leap seconds).</summary>
    private static DateTime Utc(JsonElement entry) =>
        new DateTime(2000, 1, 1, 12, 0, 0, DateTimeKind.Utc)
            .AddDays(Number(entry, "jdTt") - 2451545.0)
            .AddSeconds(-69.184);

    private static double Number(JsonElement entry, string name) =>
        entry.GetProperty(name).GetDouble();

    private static List<JsonElement> Read()
    {
        using var stream = typeof(RigidMountTests).Assembly.GetManifestResourceStream(
            "rigid-mount.json"
        )!;
        using var document = JsonDocument.Parse(stream);
        return [.. document.RootElement.Clone().EnumerateArray()];
    }
}
