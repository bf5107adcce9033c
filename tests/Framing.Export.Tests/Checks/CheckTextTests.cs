using System.Text.Json;
using Framing.Planning;
using Framing.Planning.Tests;
using Framing.Sky;
using PlanChecks = Framing.Planning.Tests.Checks;

namespace Framing.Export.Tests;

public sealed class CheckTextTests
{
    private static readonly FramedPlan Plan = PlanChecks.Plan(40.0, 61.0);

    private static SkyDirection Panel => Plan.Panels[0].Centre;

    [Fact]
    public void Write_FrameOnThePanel_SaysStart()
    {
        var text = Flat(Say(Panel, 20.0));
        Assert.Contains("Good: start.", text, StringComparison.Ordinal);
        Assert.Contains("It shows all of the panel.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Hold", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(15.0, "counter-clockwise", "turn clockwise")]
    [InlineData(25.0, "clockwise", "turn counter-clockwise")]
    public void Write_CameraTurned_SaysWhichWayAsSeenFromBehind(
        double angle,
        string body,
        string stars
    )
    {
        var text = Flat(Say(Panel, angle));
        Assert.Contains(
            $"Turn the camera 5.0° {body}, seen from behind the camera",
            text,
            StringComparison.Ordinal
        );
        Assert.Contains($"the stars in the picture {stars}", text, StringComparison.Ordinal);
        Assert.Contains("take a new frame", text, StringComparison.Ordinal);

        // Keys come after the turn, which shifts the pointing.
        Assert.DoesNotContain("Hold", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_FrameABitWest_SaysKeysWithTheStarsWay()
    {
        var text = Say(
            Panel.Offset(PositionAngle.FromDegrees(270.0), Angle.FromArcminutes(20.0)),
            20.0
        );
        Assert.Contains("Hold ► (east) at speed", text, StringComparison.Ordinal);
        Assert.Contains("Then hold ◄ (west) at speed", text, StringComparison.Ordinal);
        Assert.Contains("Or type instead: ", text, StringComparison.Ordinal);
        Assert.EndsWith("Then take a new frame.\n", text, StringComparison.Ordinal);
        Assert.All(text.Split('\n'), line => Assert.InRange(line.Length, 0, 100));
    }

    [Fact]
    public void Write_FrameNotSolved_SaysWhy() =>
        Assert.Equal(
            "a.fits: too few stars.\n",
            CheckText.Write(new("a.fits", null, "too few stars", null, null, []))
        );

    [Fact]
    public void Json_OfAFrame_HasTheNamesOfTheContract()
    {
        var seen = PlanChecks.Frame(
            Plan,
            Panel.Offset(PositionAngle.East, Angle.FromArcminutes(20.0)),
            20.4
        );
        var text = CheckWriter.Write([
            new("a.fits", PlanChecks.Check(Plan, seen), null, 250.2, null, []),
            new("b.fits", null, "too few stars", null, null, []),
        ]);
        using var document = JsonDocument.Parse(text);
        var frames = document.RootElement.GetProperty("frames");
        var first = frames[0];
        Assert.Equal("a.fits", first.GetProperty("file").GetString());
        Assert.Equal(1, first.GetProperty("panel").GetInt32());
        Assert.Equal("not-yet", first.GetProperty("verdict").GetString());
        Assert.Equal("move", first.GetProperty("steps")[0].GetString());
        Assert.InRange(first.GetProperty("turnCameraDeg").GetDouble(), -1.5, 0.5);
        var needed = first.GetProperty("moveNeeded");
        Assert.Equal(20.0, needed.GetProperty("totalArcmin").GetDouble(), 0.01);
        Assert.Equal(-20.0, needed.GetProperty("eastArcmin").GetDouble(), 0.1);
        var move = first.GetProperty("moves")[0];
        Assert.Equal("west", move.GetProperty("towards").GetString());
        Assert.Equal("◄", move.GetProperty("key").GetString());
        Assert.Equal("3", move.GetProperty("speed").GetString());
        Assert.Equal(20.0, move.GetProperty("xSidereal").GetDouble());

        // 20' on the sky at 61.1° of date are 41.4' of the axis, 8.26 s at 20 times 15.04″.
        Assert.Equal(8.26, move.GetProperty("seconds").GetDouble(), 0.05);
        Assert.NotNull(first.GetProperty("retype").GetProperty("ra").GetString());
        Assert.False(first.GetProperty("displayedMirrored").GetBoolean());
        Assert.Contains(
            "by",
            first.GetProperty("starsMustMove").GetString(),
            StringComparison.Ordinal
        );
        Assert.InRange(first.GetProperty("coveredFraction").GetDouble(), 0.8, 0.99);
        Assert.Equal("too few stars", frames[1].GetProperty("reason").GetString());
        Assert.False(frames[1].GetProperty("solved").GetBoolean());
    }

    /// <summary>The words without the breaks of lines.</summary>
    private static string Flat(string text) =>
        string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static string Say(SkyDirection centre, double angle) =>
        CheckText.Write(
            new(
                "a.fits",
                PlanChecks.Check(Plan, PlanChecks.Frame(Plan, centre, angle)),
                null,
                null,
                null,
                []
            )
        );
}
