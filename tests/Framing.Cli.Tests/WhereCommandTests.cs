using System.Text.Json;

namespace Framing.Cli.Tests;

public sealed class WhereCommandTests
{
    private const string At = "2026-10-10T22:00Z";

    private const string Site = """
        latitude_deg = 52.0
        longitude_deg = 5.0
        elevation_m = 0
        time_zone = "Europe/Amsterdam"
        pressure_hpa = 1010
        temperature_c = 10
        """;

    private static readonly string[] SiteNames =
    [
        "altitudeDeg",
        "trueAltitudeDeg",
        "azimuthDeg",
        "hourAngleHours",
        "airmass",
        "parallacticAngleDeg",
        "nextTransit",
        "nextRise",
        "nextSet",
    ];

    [Fact]
    public void Where_OverASite_AgreesWithErfa()
    {
        using var session = new Session();
        session.Write("site.toml", Site);
        var json = session
            .Run("where", "10.684708,41.26875", "--site", "site.toml", "--at", At, "--json")
            .Json();

        // ERFA 2.0.0, atci13 and hd2ae with gst06a: entry nt-altaz-m31 of night.checks.json; transit nt-transit-m31.
        Assert.Equal(JsonValueKind.Null, json.GetProperty("name").ValueKind);
        Assert.Equal(10.684708, json.GetProperty("j2000").GetProperty("raDeg").GetDouble(), 1e-6);
        Assert.Equal(11.059684, json.GetProperty("ofDate").GetProperty("raDeg").GetDouble(), 5e-6);
        Assert.Equal(41.418601, json.GetProperty("ofDate").GetProperty("decDeg").GetDouble(), 5e-6);
        Assert.Equal("2026-10-10T22:00:00Z", json.GetProperty("at").GetString());
        Assert.Equal(74.55565, json.GetProperty("trueAltitudeDeg").GetDouble(), 3e-4);
        Assert.Equal(126.70788, json.GetProperty("azimuthDeg").GetDouble(), 5e-4);
        var transit = json.GetProperty("nextTransit").GetDateTime();
        var expected = new DateTime(2026, 10, 10, 23, 5, 58, DateTimeKind.Utc);
        Assert.InRange(Math.Abs((transit - expected).TotalSeconds), 0.0, 2.0);

        // 349.518976° of sidereal time, 5° east, less the right ascension, in hours.
        Assert.Equal(
            (349.518976 + 5.0 - 11.059684 - 360.0) / 15.0,
            json.GetProperty("hourAngleHours").GetDouble(),
            1e-5
        );

        // Saemundsson 1986: 0.28′ at 74.6°; 1/sin of the altitude is the airmass to 0.001 there.
        var apparent = json.GetProperty("altitudeDeg").GetDouble();
        Assert.Equal(74.55565 + (0.28 / 60.0), apparent, 4e-4);
        Assert.Equal(
            1.0 / Math.Sin(double.DegreesToRadians(apparent)),
            json.GetProperty("airmass").GetDouble(),
            1e-3
        );
        Assert.Equal(JsonValueKind.Null, json.GetProperty("nextRise").ValueKind);
        Assert.Equal(JsonValueKind.Null, json.GetProperty("nextSet").ValueKind);
    }

    [Fact]
    public void Where_WithoutASite_LeavesWhatNeedsOneEmpty()
    {
        using var session = new Session();
        var outcome = session.Run("where", "heart", "nebula", "--json");
        Assert.Equal(0, outcome.Code);
        var json = outcome.Json();
        Assert.Equal("Heart Nebula (IC 1805)", json.GetProperty("name").GetString());
        Assert.Equal("2026-11-20T21:00:00Z", json.GetProperty("at").GetString());
        foreach (var name in SiteNames)
        {
            Assert.Equal(JsonValueKind.Null, json.GetProperty(name).ValueKind);
        }

        var text = session.Run("where", "heart", "nebula");
        Assert.Equal(0, text.Code);
        Assert.Contains("No site was given", text.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_InText_GivesBothClocksAndTheOffset()
    {
        using var session = new Session();
        session.Write("site.toml", Site);
        var output = session.Run("where", "orion nebula", "--site", "site.toml").Output;
        Assert.Contains(
            "2026-11-20 21:00 UTC  (22:00 at the site, UTC+01:00)",
            output,
            StringComparison.Ordinal
        );
        Assert.Contains("above the horizon, in the", output, StringComparison.Ordinal);
        Assert.Contains("  rises", output, StringComparison.Ordinal);
        Assert.Contains("  sets", output, StringComparison.Ordinal);
        Assert.Contains("of date", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("heart nebula", "It never sets here.")]
    [InlineData("10,-80", "It never rises here.")]
    public void Where_OfWhatNeverCrossesTheHorizon_SaysSo(string target, string words)
    {
        using var session = new Session();
        session.Write("site.toml", Site);
        var outcome = session.Run("where", target, "--site", "site.toml");
        Assert.Equal(0, outcome.Code);
        Assert.Contains(words, outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_WithAnOffset_IsTheSameMoment()
    {
        using var session = new Session();
        var east = session.Run("where", "vega", "--at", "2026-10-11T00:00+02:00", "--json");
        var zulu = session.Run("where", "vega", "--at", At, "--json");
        Assert.Equal(zulu.Output, east.Output);
    }

    [Theory]
    [InlineData("\"hart nebula\"", "hart nebula")]
    [InlineData("400", "400,10")]
    [InlineData("2026-02-30", "m31", "--at", "2026-02-30T10:00Z")]
    [InlineData("offset", "m31", "--at", "2026-11-20T21:00")]
    [InlineData("1950 to 2100", "m31", "--at", "1900-01-01T00:00Z")]
    [InlineData("nowhere.toml", "m31", "--site", "nowhere.toml")]
    [InlineData("\"Mars/Base\"", "m31", "--site", "mars.toml")]
    [InlineData("95", "m31", "--site", "north.toml")]
    public void Where_OfBadInput_IsOneLine(string named, params string[] args)
    {
        using var session = new Session();
        session.Write(
            "mars.toml",
            "latitude_deg = 10\nlongitude_deg = 5\ntime_zone = \"Mars/Base\"\n"
        );
        session.Write("north.toml", "latitude_deg = 95\nlongitude_deg = 5\n");
        var outcome = session.Run(["where", .. args]);
        Assert.Equal(2, outcome.Code);
        Assert.Empty(outcome.Output);
        var line = Assert.Single(outcome.Error.TrimEnd('\n').Split('\n'));
        Assert.Contains(named, line, StringComparison.Ordinal);
    }
}
