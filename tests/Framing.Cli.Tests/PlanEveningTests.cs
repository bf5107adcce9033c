using System.Text.Json;

namespace Framing.Cli.Tests;

/// <summary>What a plan says of its evening: trails, power, files, what to type at switch-on, stars to align on.</summary>
public sealed class PlanEveningTests
{
    [Fact]
    public void Plan_WithEveryKey_ReportsTrailingAndPower()
    {
        using var session = new Session();
        var report = session
            .Run("plan", Checkout.At("samples/every-key.toml"), "--json", "--out", "out")
            .Json();

        // 15′ off the pole, 180 s, guide star in the opposite corner, +61.84°: Hook 1989 with the exact constant 45019.
        var trailing = report.GetProperty("trailing");
        var diagonal = double.Hypot(4144, 2822) * 4.63e-3;
        var dec = trailing.GetProperty("declinationDeg").GetDouble();
        var expected =
            15.0
            * 3.0
            * diagonal
            * (180.0 / Math.PI)
            / (45019.0 * Math.Cos(double.DegreesToRadians(dec)))
            / 4.63;
        Assert.Equal(expected, trailing.GetProperty("cornerPx").GetDouble(), 2e-3);
        Assert.Equal(180.0 / expected, trailing.GetProperty("longestSubS").GetDouble(), 1.0);
        Assert.True(
            trailing.GetProperty("longestSubUnguidedS").GetDouble()
                < trailing.GetProperty("longestSubGuidedS").GetDouble()
        );
        Assert.True(trailing.GetProperty("creepArcmin").GetDouble() > 0.0);

        // 41.4 W against 512·0.8·0.86·0.8 Wh.
        var power = report.GetProperty("power");
        Assert.Equal(281.8 / 41.4, power.GetProperty("hoursAvailable").GetDouble(), 0.01);
        Assert.True(power.GetProperty("hoursNeeded").GetDouble() > 5.0);
        var cautions = report.GetProperty("cautions").EnumerateArray().Select(c => c.GetString()!);
        Assert.Contains(
            cautions,
            c => c.StartsWith("The battery falls short", StringComparison.Ordinal)
        );
        Assert.Contains(cautions, c => c.Contains("residual-current", StringComparison.Ordinal));
        Assert.Contains(cautions, c => c.StartsWith("Setup: weigh down", StringComparison.Ordinal));
        Assert.Contains(cautions, c => c.Contains("not for navigation", StringComparison.Ordinal));

        var sums = report.GetProperty("sums");
        Assert.Equal(100, sums.GetProperty("subsWanted").GetInt32());
        Assert.Equal(3.0 / 3.820, sums.GetProperty("pxPerSeeing").GetDouble(), 1e-3);
        Assert.Equal(
            sums.GetProperty("frameBytes").GetInt64()
                * sums.GetProperty("subsInTheNight").GetInt64(),
            sums.GetProperty("bytes").GetInt64()
        );
    }

    [Fact]
    public void Plan_WithASite_SaysWhatToTypeAndWhereToAlign()
    {
        using var session = new Session();
        var output = session.Run("plan").Output;
        foreach (
            var line in new[]
            {
                "When switched on, the hand control asks for",
                "  zone             +01:00 (Europe/Zurich)",
                "  daylight saving  no",
                "  date             12-05-2026 (month, day, year)",
                "  site             46° 12′ N, 8° 06′ E",
                "To align on at 17:35 (UTC+01:00) (numbers of date)",
            }
        )
        {
            Assert.Contains(line, output.Split('\n'));
        }

        var folder = session.Files()[0].Split('/')[0];
        var alignment = session.Json(folder + "/report.json").GetProperty("alignment");
        var stars = alignment.GetProperty("stars").EnumerateArray().ToList();
        Assert.Equal(3, stars.Count);
        foreach (var star in stars)
        {
            var at = alignment.GetProperty("at").GetString()!;
            var place = session
                .Run(
                    "where",
                    star.GetProperty("name").GetString()!,
                    "--site",
                    Checkout.At("demo-data/meadow.toml"),
                    "--at",
                    at,
                    "--json"
                )
                .Json();
            foreach (var name in new[] { "altitudeDeg", "azimuthDeg" })
            {
                Assert.Equal(
                    place.GetProperty(name).GetDouble(),
                    star.GetProperty(name).GetDouble(),
                    0.01
                );
            }

            Assert.Equal(
                place.GetProperty("ofDate").GetProperty("raDeg").GetDouble(),
                star.GetProperty("ofDate").GetProperty("raDeg").GetDouble(),
                1e-4
            );
            Assert.True(place.GetProperty("overSkyline").GetProperty("clear").GetBoolean());
        }
    }

    [Fact]
    public void Plan_WithoutASite_HasNoNightToSpeakOf()
    {
        using var session = new Session();
        var plan = session.Write(
            "bare.toml",
            """
            [rig]
            focal_length_mm = 250
            sensor_px = [4144, 2822]
            pixel_um = 4.63
            [target]
            names = ["IC 1805"]
            [night]
            date = 2026-12-05
            """
        );
        var report = session.Run("plan", plan, "--json", "--out", "out").Json();
        Assert.Equal(JsonValueKind.Null, report.GetProperty("switchOn").ValueKind);
        Assert.Equal(JsonValueKind.Null, report.GetProperty("alignment").ValueKind);
        Assert.Equal(JsonValueKind.Null, report.GetProperty("power").ValueKind);
        Assert.False(report.GetProperty("trailing").GetProperty("guided").GetBoolean());
        Assert.DoesNotContain("out/align-1.png", session.Files());
    }

    [Fact]
    public void Plan_AtMidnightSun_ComesThrough()
    {
        using var session = new Session();
        var site = """
            latitude_deg = 69.7
            longitude_deg = 18.9
            time_zone = "Europe/Oslo"
            """;
        session.Write("north.toml", site);
        var text = File.ReadAllText(Checkout.At("samples/two-panels.toml"))
            .Replace(
                "site  = \"../demo-data/meadow.toml\"",
                "site = \"north.toml\"",
                StringComparison.Ordinal
            )
            .Replace(
                "\"../demo-data",
                "\"" + Checkout.At("demo-data").Replace('\\', '/'),
                StringComparison.Ordinal
            );
        foreach (
            var (date, code) in new[]
            {
                // Bright nights: nothing to shoot, and so said.
                ("2026-06-21", 3),
                ("2026-12-21", 0),
                ("2026-03-20", 0),
                ("2026-05-20", 3),
            }
        )
        {
            var outcome = session.Run(
                "plan",
                session.Write("plan.toml", text),
                "--date",
                date,
                "--out",
                date
            );
            Assert.Equal(code, outcome.Code);
            Assert.DoesNotContain("NaN", outcome.Output, StringComparison.Ordinal);
        }
    }
}
