using System.Globalization;
using System.Text.Json;
using Framing.Sky;

namespace Framing.Cli.Tests;

/// <summary>The cases of kind "compare" (Data/cases/compare.json: what is asked, what is expected, on which ground) through the command.</summary>
public sealed class CompareCasesTests
{
    private static readonly List<JsonElement> Cases = Read();

    [Fact]
    public void File_AsRead_HoldsFourCases() => Assert.Equal(4, Cases.Count);

    [Fact]
    public void Angle_OfASolvedFrame_DiffersFromThePlanTheShortWay()
    {
        var entry = Of("F48");
        using var session = new Session();
        var plan = session.Write(
            "plan.toml",
            MadeFrames.Plan(
                SkyDirection.FromDegrees(64.0, 28.0),
                entry.GetProperty("text").GetProperty("planned_pa").GetDouble()
            )
        );
        var found = Check(session, plan, File(entry));
        var expect = entry.GetProperty("expect");
        Assert.Equal(
            expect.GetProperty("pa_of_plus_y").GetDouble(),
            found.GetProperty("positionAngleDeg").GetDouble(),
            0.01
        );

        // The case counts frame minus plan; the camera is to be turned by plan minus frame.
        Assert.Equal(
            expect.GetProperty("difference_deg").GetDouble(),
            -found.GetProperty("turnCameraDeg").GetDouble(),
            0.01
        );
    }

    [Fact]
    public void MeanCentre_OfFourFrames_IsThatOfUnitVectors()
    {
        var entry = Of("F49");
        using var session = new Session();
        var plan = session.Write(
            "plan.toml",
            MadeFrames.Plan(SkyDirection.FromDegrees(0.1, 40.5), 0.0)
        );
        var frames = entry
            .GetProperty("text")
            .GetProperty("centres")
            .EnumerateArray()
            .Select(
                (place, i) =>
                    MadeFrames.Frame(
                        session,
                        string.Create(CultureInfo.InvariantCulture, $"{i}.fits"),
                        Place(place),
                        0.0
                    )
            )
            .ToArray();
        var centre = session
            .Run(["check", plan, .. frames, "--json"])
            .Json()
            .GetProperty("meanCentre");
        Assert.InRange(
            Direction(centre)
                .SeparationTo(Place(entry.GetProperty("expect").GetProperty("ra_dec")))
                .Arcseconds,
            0.0,
            5.0
        );
    }

    [Fact]
    public void ScaleAndField_OfATurnedFrame_AreThoseOfItsMatrix()
    {
        var entry = Of("F50");
        using var session = new Session();
        var plan = session.Write(
            "plan.toml",
            MadeFrames.Plan(SkyDirection.FromDegrees(64.0, 28.0), 45.0)
        );
        var found = Check(session, plan, File(entry));
        var expect = entry.GetProperty("expect");
        Assert.Equal(
            expect.GetProperty("scale_arcsec").GetDouble(),
            found.GetProperty("scaleArcsecPerPx").GetDouble(),
            0.001
        );
        Assert.Equal(
            expect.GetProperty("width_deg").GetDouble(),
            found.GetProperty("fieldDeg")[0].GetDouble(),
            1e-5
        );
        Assert.Equal(
            expect.GetProperty("height_deg").GetDouble(),
            found.GetProperty("fieldDeg")[1].GetDouble(),
            1e-5
        );
    }

    [Fact]
    public void Move_ToWhereTheCaseEnds_IsTheMoveOfTheCase()
    {
        var entry = Of("F51");
        var ends = entry.GetProperty("expect").EnumerateObject().Select(end => end.Value).ToList();
        var moves = entry.GetProperty("text").GetProperty("moves").EnumerateArray().ToList();
        Assert.Equal(3, moves.Count);
        for (var i = 0; i < moves.Count; i++)
        {
            using var session = new Session();
            var end = Place(ends[i]);
            var plan = session.Write("plan.toml", MadeFrames.Plan(end, 0.0));
            var start = SkyDirection.FromDegrees(moves[i][0].GetDouble(), moves[i][1].GetDouble());
            var needed = Check(session, plan, MadeFrames.Frame(session, "a.fits", start, 0.0))
                .GetProperty("moveNeeded");

            // From the case's start by the move that the check asks for: within 1″ of the case's end.
            var reached = start.Offset(
                PositionAngle.FromDegrees(
                    needed.GetProperty("towardsPositionAngleDeg").GetDouble()
                ),
                Angle.FromDegrees(moves[i][2].GetDouble())
            );
            Assert.InRange(reached.SeparationTo(end).Arcseconds, 0.0, 1.0);
            Assert.Equal(
                moves[i][2].GetDouble() * 60.0,
                needed.GetProperty("totalArcmin").GetDouble(),
                1.0 / 60.0
            );
        }
    }

    private static JsonElement Check(Session session, string plan, string frame) =>
        session.Run("check", plan, frame, "--json").Json().GetProperty("frames")[0];

    private static string File(JsonElement entry) =>
        Checkout.At("tests/Framing.Cli.Tests/Data/cases/" + entry.GetProperty("file").GetString());

    private static SkyDirection Place(JsonElement pair) =>
        SkyDirection.FromDegrees(pair[0].GetDouble(), pair[1].GetDouble());

    private static SkyDirection Direction(JsonElement place) =>
        SkyDirection.FromDegrees(
            place.GetProperty("raDeg").GetDouble(),
            place.GetProperty("decDeg").GetDouble()
        );

    private static JsonElement Of(string id) =>
        Cases.Single(entry => entry.GetProperty("id").GetString() == id);

    private static List<JsonElement> Read()
    {
        using var document = JsonDocument.Parse(
            System.IO.File.ReadAllBytes(
                Checkout.At("tests/Framing.Cli.Tests/Data/cases/compare.json")
            )
        );
        return [.. document.RootElement.Clone().GetProperty("cases").EnumerateArray()];
    }
}
