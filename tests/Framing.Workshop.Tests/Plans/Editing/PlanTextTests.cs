using System.Globalization;

namespace Framing.Workshop.Tests;

public sealed class PlanTextTests
{
    private const string Plan = """
        # The first line says why.
        title = "A plan"   # its name

        [rig] # the short lens
        focal_length_mm = 250
        sensor_px  = [4144, 2822] # unbinned

        [target]
        names = [
          "IC 1805", # the heart
          "IC 1848",
        ]

        # what the night gives
        [[night.filter]]
        name = "H-alpha"
        sub_s = 180
        [[night.filter]]
        name = "O III"
        sub_s = 300
        """;

    [Theory]
    [InlineData("title", "\"B\"", "title = \"A plan\"   # its name", "title = \"B\"   # its name")]
    [InlineData("rig.focal_length_mm", "400", "focal_length_mm = 250", "focal_length_mm = 400")]
    [InlineData(
        "rig.sensor_px",
        "[10, 20]",
        "sensor_px  = [4144, 2822] # unbinned",
        "sensor_px  = [10, 20] # unbinned"
    )]
    [InlineData("night.filter[1].sub_s", "60", "sub_s = 180", "sub_s = 60")]
    [InlineData("night.filter[2].sub_s", "60", "sub_s = 300", "sub_s = 60")]
    [InlineData("rig.mirrored", "true", "# unbinned\n", "# unbinned\nmirrored = true\n")]
    [InlineData("most", "1", "# its name\n", "# its name\nmost = 1\n")]
    [InlineData("night.filter[1].share", "2", "sub_s = 180\n", "sub_s = 180\nshare = 2\n")]
    [InlineData("night.filter[2].share", "2", "sub_s = 300", "sub_s = 300\nshare = 2")]
    [InlineData("mosaic.grid", "[2, 1]", "sub_s = 300", "sub_s = 300\n\n[mosaic]\ngrid = [2, 1]\n")]
    [InlineData(
        "target.names",
        "[\"M 31\"]",
        "[\n  \"IC 1805\", # the heart\n  \"IC 1848\",\n]",
        "[\"M 31\"]"
    )]
    public void With_AValue_ChangesItAloneAndNothingElse(
        string key,
        string value,
        string before,
        string after
    )
    {
        var plan = Plan.ReplaceLineEndings("\n");
        Assert.Equal(
            plan.Replace(before, after, StringComparison.Ordinal),
            PlanText.With("plan.toml", plan, key, value)
        );
        var windows = plan.ReplaceLineEndings("\r\n");
        Assert.Equal(
            windows.Replace(
                before.ReplaceLineEndings("\r\n"),
                after.ReplaceLineEndings("\r\n"),
                StringComparison.Ordinal
            ),
            PlanText.With("plan.toml", windows, key, value)
        );
    }

    [Theory]
    [InlineData("rig.focal_length_mm", "focal_length_mm = 250\n")]
    [InlineData("title", "title = \"A plan\"   # its name\n")]
    [InlineData("target.names", "names = [\n  \"IC 1805\", # the heart\n  \"IC 1848\",\n]\n")]
    [InlineData("night.filter[2].sub_s", "sub_s = 300")]
    [InlineData("rig.binning", "")]
    public void Without_AKey_TakesItsLineAway(string key, string gone)
    {
        var plan = Plan.ReplaceLineEndings("\n");
        Assert.Equal(
            gone.Length == 0 ? plan : plan.Replace(gone, "", StringComparison.Ordinal),
            PlanText.Without("plan.toml", plan, key)
        );
    }

    [Fact]
    public void With_ThenBack_IsTheOldText()
    {
        var plan = Plan.ReplaceLineEndings("\n");
        var changed = plan;
        for (var value = 100; value < 130; value++)
        {
            changed = PlanText.With(
                "plan.toml",
                changed,
                "rig.focal_length_mm",
                value.ToString(CultureInfo.InvariantCulture)
            );
        }

        Assert.Equal(plan, PlanText.With("plan.toml", changed, "rig.focal_length_mm", "250"));
        Assert.Equal(
            plan,
            PlanText.Without(
                "plan.toml",
                PlanText.With("plan.toml", plan, "rig.mirrored", "true"),
                "rig.mirrored"
            )
        );
    }

    [Theory]
    [InlineData("rig.focal_length_mm", "250\nmirrored = ")]
    [InlineData("rig.focal_length_mm", "\"")]
    [InlineData("rig.focal_length_mm", "# 250")]
    [InlineData("rig", "{ a = 1 }")]
    [InlineData("rig.focal length", "1")]
    public void With_WhatIsNoToml_IsRefusedInOneLine(string key, string value)
    {
        var refused = Assert.Throws<PlanFileException>(() =>
            PlanText.With("plan.toml", Plan, key, value)
        );
        Assert.DoesNotContain('\n', refused.Message);
    }

    [Fact]
    public void With_AnEmptyFile_StartsIt() =>
        Assert.Equal("[rig]\nmirrored = true\n", PlanText.With("p", "", "rig.mirrored", "true"));
}
