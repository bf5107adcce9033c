using System.Text.Json;

namespace Framing.Cli.Tests;

/// <summary>The nights of a plan as the program gives them.</summary>
public sealed class PlannedNightsTests
{
    [Fact]
    public void Plan_WithASite_TellsTheNightEverywhereAlike()
    {
        using var session = new Session();
        var outcome = session.Run("plan", Checkout.At("samples/two-panels.toml"), "--out", "x");
        Assert.Equal(0, outcome.Code);
        Assert.Contains("on Sat 5 Dec 2026,", outcome.Words, StringComparison.Ordinal);
        Assert.Contains("2 h of good subs each.", outcome.Words, StringComparison.Ordinal);
        Assert.Contains(
            "Dark    18:30–06:07 (17:30–05:07 UTC).",
            outcome.Output,
            StringComparison.Ordinal
        );

        var report = session.Json("x/report.json");
        var night = Assert.Single(report.GetProperty("nights").EnumerateArray());
        Assert.Equal("2026-12-05", night.GetProperty("date").GetString());
        var blocks = night.GetProperty("blocks").EnumerateArray().ToList();
        Assert.Equal([1, 2], blocks.Select(Panel).Distinct().Order());
        Assert.Equal(100, blocks.Sum(block => block.GetProperty("subsToShoot").GetInt32()));

        var rows = File.ReadAllLines(Path.Combine(session.Folder, "x/blocks.csv"))[1..];
        Assert.Equal(blocks.Count, rows.Length);
        for (var i = 0; i < rows.Length; i++)
        {
            var fields = rows[i].Split(',');
            Assert.Equal(blocks[i].GetProperty("from").GetString(), fields[3]);
            Assert.Equal(blocks[i].GetProperty("toLocal").GetString(), fields[6]);
        }

        // Coordinates of date are for the middle of the first block; panels.csv sums up.
        foreach (var panel in report.GetProperty("panels").EnumerateArray())
        {
            var own = blocks
                .Where(block => Panel(block) == panel.GetProperty("number").GetInt32())
                .ToList();
            var (from, to) = (Time(own[0], "from"), Time(own[0], "to"));
            var at = panel.GetProperty("ofDate").GetProperty("at").GetDateTime();
            Assert.Equal(0.0, (at - (from + ((to - from) / 2.0))).TotalSeconds, 1.0);
            Assert.Contains(
                FormattableString.Invariant(
                    $",{own[0].GetProperty("from").GetString()},{own[^1].GetProperty("to").GetString()},{own.Sum(block => block.GetProperty("subsToShoot").GetInt32())}"
                ),
                File.ReadAllText(Path.Combine(session.Folder, "x/panels.csv")),
                StringComparison.Ordinal
            );
        }
    }

    [Fact]
    public void Plan_WithoutASite_HasNoNights()
    {
        using var session = new Session();
        var text = File.ReadAllText(Checkout.At("samples/two-panels.toml"))
            .Replace("site  = \"../demo-data/meadow.toml\"\n", "", StringComparison.Ordinal)
            .Replace(
                "\"../demo-data",
                "\"" + Checkout.At("demo-data").Replace('\\', '/'),
                StringComparison.Ordinal
            );
        var outcome = session.Run("plan", session.Write("plan.toml", text), "--out", "x");
        Assert.Equal(0, outcome.Code);
        Assert.DoesNotContain("Night", outcome.Output, StringComparison.Ordinal);
        Assert.Equal(
            ["plan.toml", "x/panels.csv", "x/report.json", "x/sky.png", "x/sky.svg"],
            session.Files()
        );
        Assert.False(session.Json("x/report.json").TryGetProperty("nights", out _));
    }

    [Fact]
    public void Plan_InABrightNight_EndsWithThreeSaysWhyAndPrintsTheReport()
    {
        using var session = new Session();
        var outcome = session.Run(
            "plan",
            session.Write("plan.toml", Northern),
            "--json",
            "--out",
            "x"
        );
        Assert.Equal(3, outcome.Code);
        var report = outcome.Json();
        Assert.Contains(
            "Nothing can be shot in the night of 21 June 2026: no night: the Sun does not set",
            report.GetProperty("impossible").GetString(),
            StringComparison.Ordinal
        );
        var night = report.GetProperty("nights")[0];
        Assert.Equal(JsonValueKind.Null, night.GetProperty("darkFrom").ValueKind);
        Assert.Equal(0, night.GetProperty("blocks").GetArrayLength());
        Assert.Contains("x/night.png", session.Files());
    }

    [Theory]
    [InlineData("2026-10-24", "the clocks go back from 03:00 to 02:00", "+02:00", "+01:00")]
    [InlineData("2026-03-28", "the clocks go forward from 02:00 to 03:00", "+01:00", "+02:00")]
    public void Plan_InANightInWhichTheClockIsSet_SaysSoAndWritesOffsets(
        string date,
        string words,
        string before,
        string after
    )
    {
        using var session = new Session();
        var outcome = session.Run(
            "plan",
            Checkout.At("samples/two-panels.toml"),
            "--date",
            date,
            "--out",
            "x"
        );
        Assert.Equal(0, outcome.Code);
        Assert.Contains(words, outcome.Words, StringComparison.Ordinal);
        var dark = outcome
            .Output.Split('\n')
            .First(line => line.StartsWith("Dark", StringComparison.Ordinal));
        Assert.Contains(before, dark, StringComparison.Ordinal);
        Assert.Contains(after, dark, StringComparison.Ordinal);
        Assert.Single(
            session
                .Json("x/report.json")
                .GetProperty("nights")[0]
                .GetProperty("clockChanges")
                .EnumerateArray()
        );
    }

    [Fact]
    public void Plan_OfMoreThanFits_SaysWhatIsShort()
    {
        using var session = new Session();
        var text = File.ReadAllText(Checkout.At("samples/two-panels.toml"))
            .Replace("goal_h_per_panel = 2", "goal_h_per_panel = 6", StringComparison.Ordinal)
            .Replace(
                "\"../demo-data",
                "\"" + Checkout.At("demo-data").Replace('\\', '/'),
                StringComparison.Ordinal
            );
        var outcome = session.Run("plan", session.Write("plan.toml", text), "--out", "x");
        Assert.Equal(0, outcome.Code);
        Assert.Contains("falls short by", outcome.Words, StringComparison.Ordinal);
        Assert.Contains(
            "Begin the second night with panel",
            outcome.Words,
            StringComparison.Ordinal
        );
        Assert.Contains(
            session.Json("x/report.json").GetProperty("cautions").EnumerateArray(),
            caution => caution.GetString()!.Contains("falls short by", StringComparison.Ordinal)
        );
    }

    private const string Northern = """
        [rig]
        focal_length_mm = 250
        sensor_px = [4144, 2822]
        pixel_um = 4.63

        [site]
        latitude_deg = 69.7
        longitude_deg = 18.9
        elevation_m = 10

        [target]
        names = ["IC 1805"]

        [night]
        date = 2026-06-21

        [[night.filter]]
        name = "H-alpha"
        sub_s = 180

        """;

    private static int Panel(JsonElement block) => block.GetProperty("panel").GetInt32();

    private static DateTime Time(JsonElement block, string name) =>
        block.GetProperty(name).GetDateTime();
}
