using System.Net;
using System.Text.Json;
using Framing.Export;

namespace Framing.Web.Tests;

public sealed class PlanOnThePageTests
{
    [Fact]
    public async Task Plan_IsTheReportOfTheCommandLineToTheLastDigit()
    {
        await using var page = await PageFixture.Open();
        var plan = await page.Get("/api/plan");

        Assert.Equal(
            JsonSerializer.Serialize(
                JsonDocument.Parse(page.Desk.Current.Report).RootElement.Clone()
            ),
            JsonSerializer.Serialize(plan.GetProperty("report"))
        );
        Assert.True(plan.GetProperty("isSaved").GetBoolean());
        Assert.Equal(PageFixture.Plan, plan.GetProperty("text").GetString());
    }

    [Theory]
    [InlineData("[mosaic]\ngrid = [1, 1]\n")]
    [InlineData("[mosaic]\ngrid = [3, 2]\n")]
    [InlineData("[mosaic]\ngrid = [3, 1]\n")]
    [InlineData("[mosaic]\ngrid = \"adapted\"\n")]
    public async Task Sentence_OfAnyPlan_IsThatOfTheCommandLineCutInParts(string mosaic)
    {
        await using var page = await PageFixture.Open(PageFixture.Plan + mosaic);
        var parts = (await page.Get("/api/plan")).GetProperty("sentence").EnumerateArray().ToList();
        var sentence = string.Concat(parts.Select(part => part.GetProperty("text").GetString()));

        var spoken = SummaryText.Sentence(page.Desk.Current.Plan);
        Assert.Equal(spoken + " Coordinates are for the night of Sat 5 Dec 2026.", sentence);
        var opens = parts
            .Where(part => part.TryGetProperty("opens", out _))
            .Select(part => part.GetProperty("opens").GetString()!)
            .ToList();
        string[] wanted =
            page.Desk.Current.Plan.Panels.Count > 1
                ? ["target", "rig", "angle", "panels", "overlap", "night"]
                : ["target", "rig", "angle", "panels", "night"];
        Assert.Equal(wanted, opens);
    }

    [Theory]
    [InlineData("[1, 1]")]
    [InlineData("[2, 1]")]
    [InlineData("[3, 2]")]
    public async Task Sentence_OfAPlanWithASite_OpensTheNightWhereItIsSaid(string grid)
    {
        await using var page = await PageFixture.Open(
            PageFixture.Plan
                + $"[[night.filter]]\nname = \"H-alpha\"\nsub_s = 180\n[site]\nlatitude_deg = 46.2\nlongitude_deg = 8.1\ntime_zone = \"Europe/Zurich\"\n[mosaic]\ngrid = {grid}\n"
        );
        var plan = await page.Get("/api/plan");
        var parts = plan.GetProperty("sentence").EnumerateArray().ToList();

        Assert.Equal(
            SummaryText.Sentence(page.Desk.Current.Plan, page.Desk.Current.Nights),
            string.Concat(parts.Select(part => part.GetProperty("text").GetString()))
        );
        Assert.Equal(
            "Sat 5 Dec 2026",
            Assert
                .Single(
                    parts,
                    part =>
                        part.TryGetProperty("opens", out var opens) && opens.GetString() == "night"
                )
                .GetProperty("text")
                .GetString()
        );
        Assert.True(plan.GetProperty("hasNights").GetBoolean());
        var mark = plan.GetProperty("mark").GetString();
        using var band = await page.Client.GetAsync($"/night.svg?mark={mark}&palette=night");
        Assert.Equal("image/svg+xml", band.Content.Headers.ContentType!.MediaType);
        using var blocks = await page.Client.GetAsync("/files/blocks.csv");
        Assert.StartsWith(
            "night,panel,filter",
            await blocks.Content.ReadAsStringAsync(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Edit_ThenSave_ChangesTheFileAndKeepsItsComments()
    {
        await using var page = await PageFixture.Open();
        var mark = (await page.Get("/api/plan")).GetProperty("mark").GetString()!;

        var (status, edited) = await page.Post(
            "/api/edit",
            new { mark, edits = new[] { new { key = "mosaic.grid", value = "[3, 2]" } } }
        );

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Equal(6, edited.GetProperty("report").GetProperty("panels").GetArrayLength());
        Assert.False(edited.GetProperty("isSaved").GetBoolean());
        Assert.Equal(PageFixture.Plan, await File.ReadAllTextAsync(page.PlanPath));

        var (_, saved) = await page.Post(
            "/api/save",
            new { mark = edited.GetProperty("mark").GetString() }
        );

        Assert.True(saved.GetProperty("isSaved").GetBoolean());
        Assert.Equal(
            PageFixture.Plan + "\n[mosaic]\ngrid = [3, 2]\n",
            await File.ReadAllTextAsync(page.PlanPath)
        );
    }

    [Fact]
    public async Task Edit_FromASecondTab_IsToldAndNotLost()
    {
        await using var page = await PageFixture.Open();
        var mark = (await page.Get("/api/plan")).GetProperty("mark").GetString()!;
        await page.Post(
            "/api/edit",
            new { mark, edits = new[] { new { key = "rig.focal_length_mm", value = "300" } } }
        );

        var (status, told) = await page.Post(
            "/api/edit",
            new { mark, edits = new[] { new { key = "rig.focal_length_mm", value = "135" } } }
        );

        Assert.Equal(HttpStatusCode.Conflict, status);
        Assert.Contains(
            "changed elsewhere",
            told.GetProperty("problem").GetString(),
            StringComparison.Ordinal
        );
        Assert.Equal(
            300.0,
            (await page.Get("/api/plan"))
                .GetProperty("form")
                .GetProperty("focalLengthMm")
                .GetDouble()
        );
    }

    [Theory]
    [InlineData("rig.focal_length_mm", "-1", "focal_length_mm")]
    [InlineData("target.names", "[\"hart nebula\"]", "Heart Nebula")]
    [InlineData("rotation.strategy", "\"to-outlin\"", "to-outline")]
    [InlineData("mosaic.grid", "[3, ", "plan.toml")]
    public async Task Edit_ToWhatCannotBe_IsOneLine(string key, string value, string word)
    {
        await using var page = await PageFixture.Open();
        var mark = (await page.Get("/api/plan")).GetProperty("mark").GetString()!;
        var (status, told) = await page.Post(
            "/api/edit",
            new { mark, edits = new[] { new { key, value } } }
        );
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        var line = told.GetProperty("problem").GetString()!;
        Assert.DoesNotContain('\n', line);
        Assert.Contains(word, line, StringComparison.Ordinal);
        Assert.Equal(mark, (await page.Get("/api/plan")).GetProperty("mark").GetString());
    }

    [Fact]
    public async Task Sketch_WhereThePanelsAre_IsThePlanItself()
    {
        await using var page = await PageFixture.Open();
        var mark = (await page.Get("/api/plan")).GetProperty("mark").GetString()!;
        var sky = (await page.Get("/api/sky?width=1200&height=750")).GetProperty("panels");

        var (status, sketch) = await page.Post(
            "/api/sketch",
            new
            {
                mark,
                width = 1200,
                height = 750,
                x = sky.GetProperty("centre").GetProperty("x").GetDouble(),
                y = sky.GetProperty("centre").GetProperty("y").GetDouble(),
                turnDeg = 0.0,
            }
        );

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Equal(
            sky.GetProperty("marginArcmin").GetDouble(),
            sketch.GetProperty("marginArcmin").GetDouble(),
            0.1
        );
        foreach (
            var (one, other) in sky.GetProperty("panels")
                .EnumerateArray()
                .Zip(sketch.GetProperty("panels").EnumerateArray())
        )
        {
            foreach (
                var (from, to) in one.GetProperty("corners")
                    .EnumerateArray()
                    .Zip(other.GetProperty("corners").EnumerateArray())
            )
            {
                Assert.Equal(
                    from.GetProperty("x").GetDouble(),
                    to.GetProperty("x").GetDouble(),
                    0.05
                );
                Assert.Equal(
                    from.GetProperty("y").GetDouble(),
                    to.GetProperty("y").GetDouble(),
                    0.05
                );
            }
        }
    }

    [Fact]
    public async Task Sketch_Turned_TurnsTheCameraAsPositionAnglesGrow()
    {
        await using var page = await PageFixture.Open();
        var mark = (await page.Get("/api/plan")).GetProperty("mark").GetString()!;
        var sky = (await page.Get("/api/sky?width=1200&height=750")).GetProperty("panels");

        var (_, sketch) = await page.Post(
            "/api/sketch",
            new
            {
                mark,
                width = 1200,
                height = 750,
                x = sky.GetProperty("centre").GetProperty("x").GetDouble(),
                y = sky.GetProperty("centre").GetProperty("y").GetDouble(),
                turnDeg = 10.0,
            }
        );

        Assert.Equal(
            sky.GetProperty("angleDeg").GetDouble() + 10.0,
            sketch.GetProperty("angleDeg").GetDouble(),
            6
        );

        // East is left of north in the picture: a growing position angle leans the mosaic to the left.
        Assert.Equal(
            sky.GetProperty("leanDeg").GetDouble() - 10.0,
            sketch.GetProperty("leanDeg").GetDouble(),
            0.2
        );
    }

    [Fact]
    public async Task Tick_APanel_IsKeptBesideThePlan()
    {
        await using var page = await PageFixture.Open();
        await page.Post("/api/tick", new { number = 2, isDone = true });
        var plan = await page.Get("/api/plan");
        Assert.Equal(2, Assert.Single(plan.GetProperty("done").EnumerateArray()).GetInt32());
        Assert.True(File.Exists(page.PlanPath + ".done"));

        var (status, _) = await page.Post("/api/tick", new { number = 9, isDone = true });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);

        var (_, after) = await page.Post("/api/tick", new { number = 2, isDone = false });
        Assert.Empty(after.GetProperty("done").EnumerateArray());
    }

    [Theory]
    [InlineData("plan.toml", "application/toml")]
    [InlineData("report.json", "application/json")]
    [InlineData("panels.csv", "text/csv")]
    [InlineData("sky.png", "image/png")]
    [InlineData("sky.svg", "image/svg+xml")]
    [InlineData("everything.zip", "application/zip")]
    public async Task Files_AreThoseOfTheCommandLine(string name, string type)
    {
        await using var page = await PageFixture.Open();
        using var response = await page.Client.GetAsync("/files/" + name);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        Assert.Equal(type, response.Content.Headers.ContentType!.MediaType);
        Assert.Equal(name, response.Content.Headers.ContentDisposition!.FileName!.Trim('"'));
        var bytes = await response.Content.ReadAsByteArrayAsync();
        Assert.True(bytes.Length > 100);
        if (name == "report.json")
        {
            Assert.Equal(page.Desk.Current.Report, System.Text.Encoding.UTF8.GetString(bytes));
        }
    }

    [Fact]
    public async Task Find_ANameThatIsNone_SaysWhatIsNear()
    {
        await using var page = await PageFixture.Open();
        Assert.Contains(
            "Heart Nebula",
            (await page.Get("/api/find?words=hart%20nebula")).GetProperty("problem").GetString(),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "IC 1805",
            (await page.Get("/api/find?words=ic1805")).GetProperty("label").GetString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Sky_InBothPalettes_IsAPicture()
    {
        await using var page = await PageFixture.Open();
        var mark = (await page.Get("/api/plan")).GetProperty("mark").GetString()!;
        foreach (var palette in (string[])["day", "night"])
        {
            using var response = await page.Client.GetAsync(
                $"/sky.png?mark={mark}&width=800&height=500&palette={palette}"
            );
            Assert.Equal("image/png", response.Content.Headers.ContentType!.MediaType);
            var bytes = await response.Content.ReadAsByteArrayAsync();
            Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], bytes[..4]);
        }

        using var old = await page.Client.GetAsync("/sky.png?mark=0&width=800&height=500");
        Assert.Equal(HttpStatusCode.Conflict, old.StatusCode);
    }
}
