using System.Text;
using System.Text.Json;
using Framing.Mosaics;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Export.Tests;

public sealed class ReportWriterTests
{
    private const double ArcminutesPerRadian = 60.0 * 180.0 / Math.PI;

    [Fact]
    public void Write_APlan_HasEveryBlockInOrder()
    {
        var report = Read(Plans.Two);

        Assert.Equal(
            [
                "schema",
                "title",
                "program",
                "rig",
                "rotation",
                "mosaic",
                "panels",
                "coverage",
                "cautions",
            ],
            report.EnumerateObject().Select(property => property.Name)
        );
        Assert.Equal("framing-report/1", report.GetProperty("schema").GetString());
        Assert.Equal("framing 1.2.3", report.GetProperty("program").GetString());
        Assert.Equal(
            [
                "number",
                "column",
                "row",
                "centre",
                "ofDate",
                "entry",
                "positionAngleDeg",
                "cornersDeg",
                "turnToGridDeg",
            ],
            report.GetProperty("panels")[1].EnumerateObject().Select(property => property.Name)
        );
    }

    [Fact]
    public void Write_APlan_KeepsItsNumbersToTheLastDigitPrinted()
    {
        var plan = Plans.Two;

        var report = Read(plan);

        // 4.63 µm at 250 mm: 3.820 arcsec a pixel; 4144 and 2822 of them, by the tangent: 4.3951 and 2.9938 degrees.
        Assert.Equal(
            3.820024,
            report.GetProperty("rig").GetProperty("scaleArcsecPerPx").GetDouble()
        );
        Assert.Equal(4.395116, report.GetProperty("rig").GetProperty("fieldDeg")[0].GetDouble());
        Assert.Equal(2.993793, report.GetProperty("rig").GetProperty("fieldDeg")[1].GetDouble());
        var mosaic = report.GetProperty("mosaic");
        Assert.Equal(
            0.15 * 4144 * 0.00463 / 250.0 * ArcminutesPerRadian,
            mosaic.GetProperty("overlapArcmin")[0].GetDouble(),
            5e-7
        );
        Assert.Equal(JsonValueKind.Null, mosaic.GetProperty("overlapArcmin")[1].ValueKind);
        Assert.Equal(
            plan.Route!.Order.Select(index => index + 1),
            mosaic.GetProperty("shootingOrder").EnumerateArray().Select(entry => entry.GetInt32())
        );
        Assert.Equal(plan.Route.PastAndBack, mosaic.GetProperty("movesPastAndBack").GetInt32());
        var turning = mosaic.GetProperty("turning");
        Assert.Equal(
            plan.Turns!.Largest.Degrees,
            turning.GetProperty("largestDeg").GetDouble(),
            1e-6
        );
        Assert.Equal(
            [1, 2],
            turning.GetProperty("panels").EnumerateArray().Select(entry => entry.GetInt32())
        );
        Assert.Equal(
            plan.Turns.OverlapLeftAlone.Arcminutes,
            turning.GetProperty("overlapLeftAloneArcmin").GetDouble(),
            1e-5
        );
        Assert.Equal(
            plan.Turns.OverlapTurned.Arcminutes,
            turning.GetProperty("overlapTurnedArcmin").GetDouble(),
            1e-5
        );
        Assert.Equal(plan.Turns.IsWorthIt, turning.GetProperty("worthIt").GetBoolean());
        Assert.Equal(2, report.GetProperty("panels").GetArrayLength());
        foreach (
            var (panel, written) in plan.Panels.Zip(report.GetProperty("panels").EnumerateArray())
        )
        {
            Assert.Equal(panel.Number, written.GetProperty("number").GetInt32());
            Assert.Equal(
                plan.Turns.ToGrid[panel.Number - 1].Degrees,
                written.GetProperty("turnToGridDeg").GetDouble(),
                1e-6
            );
            var centre = written.GetProperty("centre");
            Assert.Equal(
                panel.Centre.RightAscension.Degrees,
                centre.GetProperty("raDeg").GetDouble(),
                5.1e-10
            );
            Assert.Equal(
                panel.Centre.Declination.Degrees,
                centre.GetProperty("decDeg").GetDouble(),
                5.1e-10
            );
            Assert.Equal(4, written.GetProperty("cornersDeg").GetArrayLength());
            Assert.Equal(
                panel.Corners[2].Declination.Degrees,
                written.GetProperty("cornersDeg")[2][1].GetDouble(),
                5.1e-10
            );
            Assert.Equal(
                "2026-12-06T00:00:00Z",
                written.GetProperty("ofDate").GetProperty("at").GetString()
            );
            Assert.Equal(panel.EntryRa, written.GetProperty("entry").GetProperty("ra").GetString());
        }
    }

    [Fact]
    public void Write_AnglesThatRoundToAWholeTurn_AreZero()
    {
        var panel = Read(Plans.OneAt(359.9999999999, 10.0, 359.99999999999)).GetProperty("panels")[
            0
        ];

        Assert.Equal(0.0, panel.GetProperty("centre").GetProperty("raDeg").GetDouble());
        Assert.Equal(0.0, panel.GetProperty("positionAngleDeg").GetDouble());
    }

    [Fact]
    public void Write_NumbersThatRoundToZero_CarryNoSign()
    {
        var text = ReportWriter.WriteText(Plans.OneAt(10.0, -1e-12, 0.0), "framing 1.2.3");

        Assert.Contains("\"decDeg\": 0\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("-0\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("-0,", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_ATitleWithQuotesAndSigns_StaysOneReadableDocument()
    {
        const string title = "The \"long\" one \\ 90° 5′ <b>\n";
        var plan = Plans.One with { Request = Plans.One.Request with { Title = title } };

        var text = ReportWriter.WriteText(plan, "framing 1.2.3");

        Assert.Contains("90° 5′ <b>", text, StringComparison.Ordinal);
        using var document = JsonDocument.Parse(text);
        Assert.Equal(title, document.RootElement.GetProperty("title").GetString());
    }

    [Fact]
    public void Write_APlan_IsUtf8WithLineFeedsAndEndsInOne()
    {
        var bytes = ReportWriter.Write(Plans.Two, "framing 1.2.3");

        Assert.Equal((byte)'{', bytes[0]);
        Assert.Equal("}\n"u8, bytes.AsSpan()[^2..]);
        Assert.DoesNotContain((byte)'\r', bytes);
        Assert.Equal(
            ReportWriter.WriteText(Plans.Two, "framing 1.2.3"),
            Encoding.UTF8.GetString(bytes)
        );
    }

    [Fact]
    public void Write_CoverageThatCouldNotBeMeasured_IsNull()
    {
        var report = Read(Plans.One with { Coverage = null, Odds = null });
        Assert.Equal(JsonValueKind.Null, report.GetProperty("coverage").ValueKind);
    }

    [Fact]
    public void Write_Odds_StandInTheCoverage()
    {
        var odds = new ClosingOdds
        {
            Trials = 20_000,
            ChanceNoGap = 0.98765,
            ChanceTargetCovered = 0.9,
            ExpectedGapArea = SolidAngle.FromSquareDegrees(0.25 / 3600.0),
            WeakestPair = new(1, 2, 0.0123),
        };

        var coverage = Read(Plans.Two with { Odds = odds }).GetProperty("coverage");

        Assert.Equal(0.98765, coverage.GetProperty("chanceNoGap").GetDouble());
        Assert.Equal(0.9, coverage.GetProperty("chanceTargetCovered").GetDouble());
        Assert.Equal(20_000, coverage.GetProperty("trials").GetInt32());
        Assert.Equal(0.25, coverage.GetProperty("expectedGapArcmin2").GetDouble(), 6);
        var pair = coverage.GetProperty("weakestPair");
        Assert.Equal([1, 2], pair.GetProperty("panels").EnumerateArray().Select(n => n.GetInt32()));
        Assert.Equal(0.0123, pair.GetProperty("chanceOfGap").GetDouble());

        var sure = Read(Plans.Two with { Odds = odds with { WeakestPair = null } });
        Assert.Equal(
            JsonValueKind.Null,
            sure.GetProperty("coverage").GetProperty("weakestPair").ValueKind
        );
    }

    [Fact]
    public void Write_MorePanelsThanAnIntHolds_CountsThem()
    {
        var report = Read(
            Plans.One with
            {
                Columns = 70_000,
                Rows = 50_000,
                Panels = [],
                Coverage = null,
                Impossible = "It needs too many panels.",
            }
        );

        Assert.Equal(
            3_500_000_000L,
            report.GetProperty("mosaic").GetProperty("panelCount").GetInt64()
        );
        Assert.Equal("It needs too many panels.", report.GetProperty("impossible").GetString());
        Assert.Equal(0, report.GetProperty("panels").GetArrayLength());
    }

    [Fact]
    public void Write_Warnings_AreTheCautions()
    {
        var report = Read(Plans.One with { Warnings = ["Mind the first.", "Mind the second."] });

        Assert.Equal(
            ["Mind the first.", "Mind the second."],
            report.GetProperty("cautions").EnumerateArray().Select(text => text.GetString()!)
        );
    }

    private static JsonElement Read(FramedPlan plan)
    {
        using var document = JsonDocument.Parse(ReportWriter.Write(plan, "framing 1.2.3"));
        return document.RootElement.Clone();
    }
}
