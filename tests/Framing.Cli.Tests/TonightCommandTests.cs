using System.Text.Json;

namespace Framing.Cli.Tests;

public sealed class TonightCommandTests
{
    private static readonly string Rig = Checkout.At("demo-data/short-lens.toml");
    private static readonly string Meadow = Checkout.At("demo-data/meadow.toml");

    [Fact]
    public void Tonight_AsJson_ListsWhatFitsByDarkHours()
    {
        using var session = new Session();
        var outcome = session.Run("tonight", Rig, Meadow, "--json");
        Assert.Equal(0, outcome.Code);
        var answer = outcome.Json();
        Assert.Equal("2026-11-20", answer.GetProperty("date").GetString());
        var dark = answer.GetProperty("darkHours").GetDouble();
        Assert.InRange(dark, 10.5, 11.5);
        var objects = answer.GetProperty("objects").EnumerateArray().ToList();
        Assert.InRange(objects.Count, 50, 600);
        var before = double.MaxValue;
        foreach (var thing in objects)
        {
            var hours = thing.GetProperty("darkHours").GetDouble();
            Assert.InRange(hours, 0.5, Math.Min(dark + 1e-3, before + 0.1));
            before = hours;
            Assert.InRange(
                thing.GetProperty("columns").GetInt32() * thing.GetProperty("rows").GetInt32(),
                1,
                4
            );
            Assert.InRange(thing.GetProperty("fills").GetDouble(), 0.1, 1.0);
            Assert.True(thing.GetProperty("sizeArcmin")[0].GetDouble() >= 29.9);
        }

        // The pair of nebulae of the demo is circumpolar there and fits; what never rises does not.
        Assert.Contains(objects, thing => thing.GetProperty("id").GetString() == "IC 1805");
        Assert.Contains(objects, thing => thing.GetProperty("id").GetString() == "NGC 1499");
        Assert.DoesNotContain(objects, thing => thing.GetProperty("id").GetString() == "NGC 3372");
    }

    [Fact]
    public void Tonight_OfAnObject_AgreesWithWhere()
    {
        using var session = new Session();
        var thing = session
            .Run("tonight", Rig, Meadow, "--json")
            .Json()
            .GetProperty("objects")
            .EnumerateArray()
            .Single(entry => entry.GetProperty("id").GetString() == "NGC 1499");
        var place = session
            .Run(
                "where",
                FormattableString.Invariant(
                    $"{thing.GetProperty("centre").GetProperty("raDeg").GetDouble()},{thing.GetProperty("centre").GetProperty("decDeg").GetDouble()}"
                ),
                "--site",
                Meadow,
                "--at",
                thing.GetProperty("highestAt").GetString()!,
                "--json"
            )
            .Json();
        Assert.Equal(
            place.GetProperty("altitudeDeg").GetDouble(),
            thing.GetProperty("highestAltitudeDeg").GetDouble(),
            0.01
        );
        var transit = place.GetProperty("nextTransit").GetDateTime();
        var apart = (transit - thing.GetProperty("highestAt").GetDateTime()).TotalHours;
        Assert.InRange(Math.Min(apart, 23.934 - apart), -0.001, 0.05);
    }

    [Fact]
    public void Tonight_InText_IsATable()
    {
        using var session = new Session();
        var outcome = session.Run("tonight", Rig, Meadow, "--date", "2026-12-05");
        Assert.Equal(0, outcome.Code);
        var lines = outcome.Output.TrimEnd('\n').Split('\n');
        Assert.StartsWith(
            "What fits 250 mm (4.40° × 2.99°) in the night of 2026-12-05",
            lines[0],
            StringComparison.Ordinal
        );
        var head = Array.FindIndex(
            lines,
            line => line.StartsWith("Dark h", StringComparison.Ordinal)
        );
        var rows = lines[(head + 1)..].TakeWhile(line => line.Length > 0).ToList();
        Assert.Equal(40, rows.Count);
        Assert.Contains("are listed with --all.", lines[^1], StringComparison.Ordinal);
        var all = session.Run("tonight", Rig, Meadow, "--date", "2026-12-05", "--all");
        Assert.True(all.Output.Split('\n').Length > lines.Length + 10);
        Assert.DoesNotContain("--all", all.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Tonight_WhereItDoesNotBecomeDark_SaysSoAndEndsWithThree()
    {
        using var session = new Session();
        session.Write(
            "north.toml",
            """
            latitude_deg = 69.7
            longitude_deg = 18.9
            time_zone = "Europe/Oslo"
            """
        );
        var outcome = session.Run("tonight", Rig, "north.toml", "--date", "2026-06-21");
        Assert.Equal(3, outcome.Code);
        Assert.Contains("the Sun does not set", outcome.Output, StringComparison.Ordinal);
        var json = session
            .Run("tonight", Rig, "north.toml", "--date", "2026-06-21", "--json")
            .Json();
        Assert.Equal(0, json.GetProperty("objects").GetArrayLength());
        Assert.Equal(JsonValueKind.Array, json.GetProperty("dark").ValueKind);
    }
}
