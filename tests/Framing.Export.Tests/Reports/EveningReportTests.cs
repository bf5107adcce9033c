using System.Text.Json;
using Framing.Nights;
using Framing.Sky;

namespace Framing.Export.Tests;

public sealed class EveningReportTests
{
    private static readonly string[] Evening =
    [
        "trailing",
        "power",
        "sums",
        "switchOn",
        "alignment",
        "cautions",
    ];

    [Fact]
    public void Write_WithNotes_PutsThemBeforeTheCautions()
    {
        var report = Read(Notes());
        Assert.Equal(
            ["coverage", .. Evening],
            report.EnumerateObject().Select(property => property.Name).TakeLast(7)
        );
        var trailing = report.GetProperty("trailing");
        Assert.True(trailing.GetProperty("guided").GetBoolean());
        Assert.Equal(1, trailing.GetProperty("subs").GetArrayLength());
        Assert.Equal(
            trailing.GetProperty("longestSubGuidedS").GetDouble(),
            trailing.GetProperty("longestSubS").GetDouble()
        );
        Assert.Equal(
            trailing.GetProperty("subs")[0].GetProperty("guidedPx").GetDouble(),
            trailing.GetProperty("cornerPx").GetDouble()
        );
        Assert.Equal(2, trailing.GetProperty("squeeze").GetArrayLength());
        var power = report.GetProperty("power");
        Assert.Equal(
            power.GetProperty("hoursAvailable").GetDouble()
                - power.GetProperty("hoursNeeded").GetDouble(),
            power.GetProperty("hoursLeft").GetDouble(),
            2e-4
        );
        var entry = report.GetProperty("switchOn");
        Assert.Equal("46° 12′ N", entry.GetProperty("latitude").GetString());
        Assert.False(entry.GetProperty("daylightSaving").GetBoolean());
        Assert.Equal("12-05-2026", entry.GetProperty("date").GetString());
        var star = Assert.Single(
            report.GetProperty("alignment").GetProperty("stars").EnumerateArray()
        );
        Assert.Equal("Vega", star.GetProperty("name").GetString());
        Assert.Equal("18h 37m 50s", star.GetProperty("entry").GetProperty("ra").GetString());
    }

    [Fact]
    public void Write_WithoutSiteAndBattery_LeavesThemNull()
    {
        var notes = new EveningNotes(
            Nights.Evening.Of(Request() with { Site = null, Battery = null, Subs = [] }),
            SiteClock.Utc,
            null,
            null
        );
        var report = Read(notes);
        foreach (var name in new[] { "power", "switchOn", "alignment" })
        {
            Assert.Equal(JsonValueKind.Null, report.GetProperty(name).ValueKind);
        }

        Assert.Equal(
            JsonValueKind.Null,
            report.GetProperty("trailing").GetProperty("cornerPx").ValueKind
        );
        Assert.Equal(0, report.GetProperty("trailing").GetProperty("squeeze").GetArrayLength());
        Assert.Equal(
            JsonValueKind.Null,
            report.GetProperty("sums").GetProperty("subsInTheNight").ValueKind
        );
    }

    [Fact]
    public void Text_WithNotes_SaysAllOfThem()
    {
        var text = SummaryText.Write(Plans.Two, Notes());
        foreach (
            var head in new[]
            {
                "\nScale   ",
                "\nTrails  ",
                "\nCreep   ",
                "\nAir     ",
                "\nFiles   ",
                "\nPower   ",
                "\n  zone             +01:00 (Europe/Zurich)\n",
                "\n  daylight saving  no\n",
                "\n  date             12-05-2026 (month, day, year)\n",
                "\n  site             46° 12′ N, 8° 06′ E\n",
                "\n  Vega  18h 37m 50s  +38° 48′ 3",
                "\nBefore you go\n",
            }
        )
        {
            Assert.Contains(head, text, StringComparison.Ordinal);
        }

        Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
        Assert.All(text.Split('\n'), line => Assert.True(line.Length <= 110, line));
    }

    private static EveningNotes Notes()
    {
        var request = Request();
        var evening = Nights.Evening.Of(request);
        var moment = SiteMoment.Of(request.Site!, new(2026, 12, 5, 16, 35, 0, DateTimeKind.Utc));
        BrightStar[] stars = [new("Vega", SkyDirection.FromDegrees(279.2367, 38.7858), 0.03)];
        var clock = SiteClock.Find("Europe/Zurich")!;
        return new(
            evening,
            clock,
            SwitchOn.Of(
                clock,
                DateOrder.MonthDayYear,
                request.Site!,
                evening.Session.From!.Value,
                evening.Dark!.Night.End
            ),
            new(moment.Utc, AlignmentChoice.Of(moment, stars, new()))
        );
    }

    private static EveningRequest Request() =>
        new()
        {
            Rig = Plans.Two.Request.Rig,
            GuideStar = GuideStar.Corner,
            GuideScale = Angle.FromArcseconds(6.4),
            Panels = [.. Plans.Two.Panels.Select(panel => panel.Centre)],
            Site = new(Angle.FromDegrees(46.2), Angle.FromDegrees(8.1), 1650.0, new(830.0, -4.0)),
            LeastAltitude = Angle.FromDegrees(25.0),
            Evening = new(2026, 12, 5),
            SunBelow = Angle.FromDegrees(-18.0),
            Setup = TimeSpan.FromMinutes(60.0),
            Flats = TimeSpan.FromMinutes(15.0),
            GoalPerPanel = TimeSpan.FromHours(2.0),
            Subs =
            [
                new(
                    "H-alpha",
                    TimeSpan.FromSeconds(180.0),
                    TimeSpan.FromSeconds(4.0),
                    3,
                    TimeSpan.FromSeconds(25.0),
                    1.0
                ),
            ],
            PolarError = Angle.FromArcminutes(15.0),
            Seeing = Angle.FromArcseconds(3.0),
            Battery = new(512.0, BatteryChemistry.LithiumIronPhosphate, 0.8, 0.2, 1.0),
            Loads = [new("mount", 9.0, 1.0)],
            BatteryCelsius = -4.0,
        };

    private static JsonElement Read(EveningNotes notes)
    {
        using var document = JsonDocument.Parse(
            ReportWriter.Write(Plans.Two, "framing 1.2.3", notes)
        );
        return document.RootElement.Clone();
    }
}
