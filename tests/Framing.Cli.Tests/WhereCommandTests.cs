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

    [Fact]
    public void Where_OverASkyline_SaysWhenItAppearsAndVanishes()
    {
        using var session = new Session();
        session.Write(
            "site.toml",
            Site + "\nhorizon = \"line.csv\"\nhorizon_azimuth_offset_deg = -10\n"
        );
        session.Write(
            "line.csv",
            "azimuth_deg,altitude_deg\n0,10\n70,12\n100,25\n120,25\n150,8\n190,5\n235,18\n260,30\n310,12\n340,10\n"
        );

        // The profile of nt-horizon-orion but its points 10° of needle off, and 345° for 330° and 0°: the same where it matters.
        // The crossings there are airless; refraction at 25° and 5° moves them by less than half a minute.
        string[] call =
        [
            "where",
            "5h35m17.3s,-5d23m28s",
            "--site",
            "site.toml",
            "--at",
            "2026-12-10T12:00Z",
        ];
        var json = session.Run([.. call, "--json"]).Json().GetProperty("overSkyline");
        Assert.False(json.GetProperty("clear").GetBoolean());
        Near("2026-12-10T20:26:35Z", json.GetProperty("nextRise"));
        Near("2026-12-11T03:02:15Z", json.GetProperty("nextSet"));
        var text = session.Run(call).Output;
        Assert.Contains("  appears  2026-12-10 20:2", text, StringComparison.Ordinal);
        Assert.Contains("  vanishes 2026-12-11 03:0", text, StringComparison.Ordinal);

        static void Near(string expected, JsonElement actual) =>
            Assert.InRange(
                (
                    actual.GetDateTimeOffset()
                    - DateTimeOffset.Parse(
                        expected,
                        System.Globalization.CultureInfo.InvariantCulture
                    )
                )
                    .Duration()
                    .TotalSeconds,
                0.0,
                60.0
            );
    }

    [Theory]
    [InlineData("69.7", "2026-06-21T22:00Z", "no night: the Sun does not set")]
    [InlineData("-69.7", "2026-06-21T22:00Z", "polar night, the Sun does not rise")]
    [InlineData("90", "2026-12-21T22:00Z", "polar night, the Sun does not rise")]
    [InlineData("52", "2026-06-21T22:00Z", "no astronomical darkness")]
    [InlineData("-90", "1950-01-01T00:00Z", "no night: the Sun does not set")]
    [InlineData("0", "2100-12-31T23:00Z", "astronomically dark")]
    public void Where_AtAnyLatitude_SaysWhatKindOfNightItIs(
        string latitude,
        string at,
        string words
    )
    {
        using var session = new Session();
        session.Write("site.toml", $"latitude_deg = {latitude}\nlongitude_deg = 5\n");
        foreach (var target in new[] { "m31", "0,90", "0,-90", "10,0" })
        {
            var outcome = session.Run("where", target, "--site", "site.toml", "--at", at);
            Assert.Equal(0, outcome.Code);
            Assert.Contains(words, outcome.Output, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Where_WithTheMoon_SaysPhaseDistanceAndLight()
    {
        using var session = new Session();
        session.Write("site.toml", Site);

        // Full Moon of 2026-11-24: nt-moon-2026-11-24 of night.checks.json has it at 22:30 with 0.9967 of it lit, 60.449° high
        // without air, azimuth 145.24°.
        string[] call = ["where", "m31", "--site", "site.toml", "--at", "2026-11-24T22:30Z"];
        var moon = session.Run([.. call, "--json"]).Json().GetProperty("moon");
        Assert.Equal(0.9967, moon.GetProperty("illuminatedFraction").GetDouble(), 2e-4);
        Assert.Equal(60.449, moon.GetProperty("altitudeDeg").GetDouble(), 0.012);
        Assert.Equal(145.241, moon.GetProperty("azimuthDeg").GetDouble(), 0.003);
        Assert.InRange(moon.GetProperty("skyBrighterMag").GetDouble(), 1.5, 4.0);
        var text = session.Run(call).Output;
        Assert.Contains("Moon     full, 100 % lit", text, StringComparison.Ordinal);
        Assert.Contains("times as bright", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_NearTheSun_Warns()
    {
        using var session = new Session();
        session.Write("site.toml", Site);
        string[] day = ["where", "m1", "--site", "site.toml", "--at", "2026-06-21T10:00Z"];
        Assert.Contains(
            "! The Sun stands 6° from here",
            session.Run(day).Output,
            StringComparison.Ordinal
        );
        Assert.Single(
            session.Run([.. day, "--json"]).Json().GetProperty("cautions").EnumerateArray()
        );

        // By night, and far from it, there is nothing to warn of.
        foreach (
            var (target, at) in new[] { ("m1", "2026-06-21T23:00Z"), ("m31", "2026-06-21T10:00Z") }
        )
        {
            Assert.Empty(
                session
                    .Run("where", target, "--site", "site.toml", "--at", at, "--json")
                    .Json()
                    .GetProperty("cautions")
                    .EnumerateArray()
            );
        }
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
