using System.Text.Json;

namespace Framing.Cli.Tests;

public sealed class PlanCommandTests
{
    private const string Minimal = """
        [rig]
        focal_length_mm = 250
        sensor_px = [4144, 2822]
        pixel_um = 4.63

        [target]
        names = ["IC 1805"]

        [night]
        date = 2026-12-05

        """;

    [Fact]
    public void Plan_WithoutAFile_PlansTheBuiltInExample()
    {
        using var session = new Session();

        var outcome = session.Run("plan");

        Assert.Equal(0, outcome.Code);
        Assert.Equal(string.Empty, outcome.Error);
        Assert.Equal(
            [
                "two-panels-across-the-hearth-2026-12-05/align-1.png",
                "two-panels-across-the-hearth-2026-12-05/align-2.png",
                "two-panels-across-the-hearth-2026-12-05/align-3.png",
                "two-panels-across-the-hearth-2026-12-05/blocks.csv",
                "two-panels-across-the-hearth-2026-12-05/night.png",
                "two-panels-across-the-hearth-2026-12-05/night.svg",
                "two-panels-across-the-hearth-2026-12-05/panels.csv",
                "two-panels-across-the-hearth-2026-12-05/report.json",
                "two-panels-across-the-hearth-2026-12-05/sky.png",
                "two-panels-across-the-hearth-2026-12-05/sky.svg",
            ],
            session.Files()
        );
        Assert.Contains("in 2 panels", outcome.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", outcome.Output, StringComparison.Ordinal);
        Assert.All(outcome.Output.Split('\n'), line => Assert.True(line.Length <= 110, line));
    }

    [Fact]
    public void Plan_OfTheTwoPanelSample_ReallyNeedsTwo()
    {
        using var session = new Session();
        session.Run("plan", Checkout.At("samples/two-panels.toml"), "--out", "two");
        var two = session.Json("two/report.json");
        Assert.Equal(2, two.GetProperty("mosaic").GetProperty("panelCount").GetInt32());
        Assert.True(two.GetProperty("rotation").GetProperty("marginArcmin").GetDouble() >= 5.0);
        Assert.Equal(
            1.0,
            two.GetProperty("coverage").GetProperty("targetCoveredFraction").GetDouble()
        );

        // The same with one frame, at the best angle there is: it must not fit.
        var text = File.ReadAllText(Checkout.At("samples/two-panels.toml"))
            .Replace("grid = \"fewest\"", "grid = [1, 1]", StringComparison.Ordinal)
            .Replace(
                "\"../demo-data",
                "\"" + Checkout.At("demo-data").Replace('\\', '/'),
                StringComparison.Ordinal
            );
        session.Run("plan", session.Write("one.toml", text), "--out", "one");
        var one = session.Json("one/report.json");
        Assert.Equal(1, one.GetProperty("mosaic").GetProperty("panelCount").GetInt32());
        Assert.True(one.GetProperty("rotation").GetProperty("marginArcmin").GetDouble() < 0.0);
        Assert.True(
            one.GetProperty("coverage").GetProperty("targetCoveredFraction").GetDouble() < 0.99
        );
        Assert.Contains(
            one.GetProperty("cautions").EnumerateArray(),
            caution => caution.GetString()!.Contains("falls", StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData("samples/single-frame.toml", 1, 1)]
    [InlineData("samples/two-panels.toml", 2, 1)]
    [InlineData("samples/six-panels.toml", 0, 6)]
    public void Plan_OfEverySample_HoldsItsTarget(string sample, int columns, int panels)
    {
        using var session = new Session();

        var outcome = session.Run("plan", Checkout.At(sample), "--json", "--out", "out");

        Assert.Equal(0, outcome.Code);
        var report = outcome.Json();
        Assert.Equal("framing-report/1", report.GetProperty("schema").GetString());
        var mosaic = report.GetProperty("mosaic");
        Assert.Equal(panels == 6 ? 6 : columns, mosaic.GetProperty("panelCount").GetInt32());
        Assert.Equal(
            mosaic.GetProperty("panelCount").GetInt32(),
            report.GetProperty("panels").GetArrayLength()
        );
        var rotation = report.GetProperty("rotation");
        Assert.True(
            rotation.GetProperty("marginArcmin").GetDouble()
                >= rotation.GetProperty("marginWantedArcmin").GetDouble() - 1e-6
        );
        Assert.Equal(
            File.ReadAllText(Path.Combine(session.Folder, "out/report.json")),
            outcome.Output
        );
    }

    [Fact]
    public void Plan_AsJson_PrintsOneDocumentAndNothingElse()
    {
        using var session = new Session();
        var outcome = session.Run("plan", session.Write("plan.toml", Minimal), "--json");
        Assert.Equal(JsonValueKind.Object, outcome.Json().ValueKind);
        Assert.Contains("Written to", outcome.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Plan_WithMorePanelsThanAllowed_EndsWithThreeAndStillPrintsTheReport()
    {
        using var session = new Session();
        var text = Minimal
            .Replace(
                "names = [\"IC 1805\"]",
                "centre = \"2h 33m, +61\"\nsize_arcmin = [3000, 2000]\nangle_deg = 10",
                StringComparison.Ordinal
            )
            .Replace("[night]", "[mosaic]\nmost_panels = 20\n\n[night]", StringComparison.Ordinal);

        var outcome = session.Run("plan", session.Write("plan.toml", text), "--json");

        Assert.Equal(3, outcome.Code);
        var report = outcome.Json();
        Assert.True(report.GetProperty("mosaic").GetProperty("panelCount").GetInt32() > 20);
        Assert.Equal(0, report.GetProperty("panels").GetArrayLength());
        Assert.Contains(
            "the plan allows 20",
            report.GetProperty("impossible").GetString(),
            StringComparison.Ordinal
        );
        Assert.Equal(["plan.toml"], session.Files());
    }

    [Fact]
    public void Plan_Again_KeepsAnEarlierPlanThatDiffers()
    {
        using var session = new Session();
        var path = session.Write("a.toml", Minimal);
        session.Run("plan", path);
        session.Run("plan", path);
        Assert.Equal(5, session.Files().Count);
        session.Write("a.toml", Minimal.Replace("= 250", "= 200", StringComparison.Ordinal));

        var outcome = session.Run("plan", path);

        Assert.Equal(0, outcome.Code);
        Assert.Equal(9, session.Files().Count);
        Assert.Contains("a-2026-12-05-2", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Plan_WithoutADate_SaysWhichItTook()
    {
        using var session = new Session();
        var text = Minimal.Replace(
            "[night]\ndate = 2026-12-05",
            string.Empty,
            StringComparison.Ordinal
        );
        var outcome = session.Run("plan", session.Write("plan.toml", text));
        Assert.Equal(0, outcome.Code);
        Assert.Contains("2026-11-20", outcome.Error, StringComparison.Ordinal);
        Assert.Contains("plan-2026-11-20/report.json", session.Files());
    }

    [Fact]
    public void Plan_WithADateInTheCall_TakesThat()
    {
        using var session = new Session();
        session.Run(
            "plan",
            session.Write("plan.toml", Minimal),
            "--date",
            "2031-02-01",
            "--out",
            "x"
        );
        Assert.StartsWith(
            "2031-02-02T00:00:00",
            session
                .Json("x/report.json")
                .GetProperty("panels")[0]
                .GetProperty("ofDate")
                .GetProperty("at")
                .GetString(),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("800x500", 800, 500)]
    [InlineData("320x200", 320, 200)]
    public void Plan_WithASize_DrawsThatSize(string size, int width, int height)
    {
        using var session = new Session();
        session.Run(
            "plan",
            session.Write("plan.toml", Minimal),
            "--size",
            size,
            "--out",
            "x",
            "--palette",
            "night"
        );
        var png = File.ReadAllBytes(Path.Combine(session.Folder, "x/sky.png"));
        Assert.Equal(
            width,
            System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16))
        );
        Assert.Equal(
            height,
            System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20))
        );
    }

    [Theory]
    [InlineData("focal_length_mm = 250", "focal_lenght_mm = 250", "focal_length_mm")]
    [InlineData("focal_length_mm = 250", "focal_length_mm = 0", "focal_length_mm", "0")]
    [InlineData("focal_length_mm = 250", "focal_length_mm = nan", "focal_length_mm", "nan")]
    [InlineData("focal_length_mm = 250", "focal_length_mm = \"300mm\"", "focal_length_mm", "300mm")]
    [InlineData("sensor_px = [4144, 2822]", "sensor_px = [0, 2822]", "sensor_px", "0")]
    [InlineData(
        "names = [\"IC 1805\"]",
        "centre = \"2h, +91\"\nsize_arcmin = [10, 10]",
        "91",
        "declination"
    )]
    [InlineData(
        "[night]",
        "[mosaic]\noverlap = \"fraction\"\noverlap_fraction = 1\n\n[night]",
        "overlap_fraction",
        "less than 1"
    )]
    [InlineData(
        "[night]",
        "[mosaic]\noverlap = \"arcminutes\"\noverlap_arcmin = 5000\n\n[night]",
        "overlap"
    )]
    [InlineData(
        "names = [\"IC 1805\"]",
        "names = [\"hart nebula\"]",
        "hart nebula",
        "Heart Nebula"
    )]
    [InlineData(
        "[night]",
        "[rotation]\nstrategy = \"to-outlin\"\n\n[night]",
        "to-outlin",
        "to-outline"
    )]
    [InlineData(
        "[night]",
        "[rotation]\nstrategy = \"keep-camera-angle\"\n\n[night]",
        "camera_angle_deg"
    )]
    public void Plan_WithBadInput_EndsInOneLineAndTwoAndNothingWritten(
        string good,
        string bad,
        params string[] words
    )
    {
        using var session = new Session();
        var path = session.Write("plan.toml", Minimal.Replace(good, bad, StringComparison.Ordinal));

        var outcome = session.Run("plan", path);

        Assert.Equal(2, outcome.Code);
        Assert.Equal(string.Empty, outcome.Output);
        var line = Assert.Single(outcome.Error.TrimEnd('\n').Split('\n'));
        Assert.Contains("plan.toml", line, StringComparison.Ordinal);
        Assert.All(words, word => Assert.Contains(word, line, StringComparison.Ordinal));
        Assert.Equal(["plan.toml"], session.Files());
    }

    [Fact]
    public void Plan_OfAFileThatIsNotThere_NamesIt()
    {
        using var session = new Session();
        var outcome = session.Run("plan", Path.Combine(session.Folder, "missing.toml"));
        Assert.Equal(2, outcome.Code);
        Assert.Contains(
            "missing.toml",
            Assert.Single(outcome.Error.TrimEnd('\n').Split('\n')),
            StringComparison.Ordinal
        );
        Assert.Empty(session.Files());
    }

    [Theory]
    [InlineData("names = [\"IC 1805\"]", "names = [\"qwertzuiop nebula\"]")]
    [InlineData("names = [\"IC 1805\"]", "names = [\"veil nebul\"]")]
    public void Plan_OfAnUnknownName_SuggestsThree(string good, string bad)
    {
        using var session = new Session();
        var outcome = session.Run(
            "plan",
            session.Write("plan.toml", Minimal.Replace(good, bad, StringComparison.Ordinal))
        );
        Assert.Equal(2, outcome.Code);
        var line = Assert.Single(outcome.Error.TrimEnd('\n').Split('\n'));
        var suggestions = line.Split("did you mean ")[1].TrimEnd('?').Split(", ");
        Assert.Equal(3, suggestions.Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(["plan.toml"], session.Files());
    }

    [Fact]
    public void Plan_OfOneObjectUnderTwoNames_NamesItOnce()
    {
        using var session = new Session();
        var path = session.Write(
            "plan.toml",
            Minimal.Replace(
                "\"IC 1805\"",
                "\"IC 1805\", \"heart nebula\"",
                StringComparison.Ordinal
            )
        );
        var outcome = session.Run("plan", path);
        Assert.Equal(0, outcome.Code);
        Assert.StartsWith("Frame Heart Nebula at 250 mm", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Plan_OfACameraWhoseAngleIsKnown_SaysHowFarToTurnIt()
    {
        using var session = new Session();
        var outcome = session.Run("plan", Checkout.At("samples/every-key.toml"), "--out", "x");

        // From 37° to 311.9°, which shows what 131.9° shows: 85.1° back.
        Assert.Contains(
            "Turn    85.1° clockwise, seen from behind the camera, from 37°",
            outcome.Output,
            StringComparison.Ordinal
        );
        Assert.Equal(
            -85.06,
            session
                .Json("x/report.json")
                .GetProperty("rotation")
                .GetProperty("turnCameraDeg")
                .GetDouble(),
            0.05
        );
    }

    [Fact]
    public void Plan_OfASkyTooWideForOneChart_StillEndsWell()
    {
        using var session = new Session();
        var text = Minimal
            .Replace("focal_length_mm = 250", "focal_length_mm = 15", StringComparison.Ordinal)
            .Replace(
                "names = [\"IC 1805\"]",
                "centre = \"18h, -20\"\nsize_arcmin = [7000, 5000]\nangle_deg = 30",
                StringComparison.Ordinal
            );
        var outcome = session.Run("plan", session.Write("plan.toml", text), "--out", "wide");
        Assert.Equal(0, outcome.Code);
        Assert.Contains("wide/sky.png", session.Files());
    }

    [Theory]
    [InlineData("18h, -20", "[7100, 1200]", 24)]
    [InlineData("18h, -20", "[7100, 1200]", 100)]
    [InlineData("2h, 85", "[7100, 7100]", 60)]
    public void Plan_OfAVeryWideTarget_SaysWhatIsCovered(
        string centre,
        string size,
        int focalLength
    )
    {
        using var session = new Session();
        var text =
            Minimal
                .Replace(
                    "focal_length_mm = 250",
                    FormattableString.Invariant($"focal_length_mm = {focalLength}"),
                    StringComparison.Ordinal
                )
                .Replace(
                    "names = [\"IC 1805\"]",
                    $"centre = \"{centre}\"\nsize_arcmin = {size}\nangle_deg = 30",
                    StringComparison.Ordinal
                ) + "[mosaic]\nmost_panels = 10000\nturn_camera_at_each_panel = true\n";

        var outcome = session.Run("plan", session.Write("plan.toml", text), "--out", "wide");

        Assert.Equal(0, outcome.Code);
        var coverage = session.Json("wide/report.json").GetProperty("coverage");
        Assert.Equal(1.0, coverage.GetProperty("targetCoveredFraction").GetDouble());
        Assert.Equal(0.0, coverage.GetProperty("gapArcmin2").GetDouble());
        Assert.True(coverage.GetProperty("areaDeg2").GetDouble() > 2400.0);
        Assert.Contains("wide/sky.png", session.Files());
    }

    [Fact]
    public void Plan_BeyondWhatTheMountReaches_SaysSo()
    {
        using var session = new Session();
        var text =
            Minimal.Replace(
                "names = [\"IC 1805\"]",
                "names = [\"Polaris\"]",
                StringComparison.Ordinal
            ) + "[mount]\ndeclination_limit_deg = 85\n";
        var outcome = session.Run("plan", session.Write("plan.toml", text));
        Assert.Equal(0, outcome.Code);
        Assert.Contains("declination_limit_deg", outcome.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Plan_WithBrokenPluginsBeside_ReportsThemAndGoesOn()
    {
        using var session = new Session();
        session.Write("more/Broken.dll", "this is no assembly");
        var path = session.Write("plan.toml", Minimal);

        var outcome = session.Run("plan", path, "--plugins", "more");

        Assert.Equal(0, outcome.Code);
        var line = Assert.Single(outcome.Error.TrimEnd('\n').Split('\n'));
        Assert.Contains("Broken.dll", line, StringComparison.Ordinal);
    }
}
