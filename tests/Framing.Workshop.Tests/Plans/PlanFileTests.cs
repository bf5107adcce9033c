using Framing.Strategies;

namespace Framing.Workshop.Tests;

/// <summary>Faults that only turn up after the plan was read.</summary>
public sealed class PlanFileTests
{
    private static readonly string[] Declared = ["overlap_fraction", "overlap_least_arcmin"];

    [Theory]
    [InlineData(
        "target.names[2]",
        "plan.toml:7:21: target.names[2] = \"XX 9\"; there is no such object"
    )]
    [InlineData(
        "target.names",
        "plan.toml:7:9: target.names = [\"IC 1805\", \"XX 9\"]; there is no such object"
    )]
    [InlineData(
        "target.margin_arcmin",
        "plan.toml:6:1: target.margin_arcmin (left out): there is no such object"
    )]
    [InlineData("mosaic.grid", "plan.toml: mosaic.grid (left out): there is no such object")]
    public void Refuse_NamesThePlaceOfTheKey(string key, string expected)
    {
        var plan = MemoryPlanFiles.Plan(
            PlanTexts.Least.Replace(
                "[\"IC 1805\"]",
                "[\"IC 1805\", \"XX 9\"]",
                StringComparison.Ordinal
            )
        );
        Assert.Equal(expected, plan.Refuse(key, "there is no such object").Message);
    }

    [Fact]
    public void Refuse_OfANameWithoutAList_NamesThePlaceOfTheName()
    {
        var plan = MemoryPlanFiles.Plan(
            PlanTexts.Least.Replace("[\"IC 1805\"]", "\"XX 9\"", StringComparison.Ordinal)
        );
        Assert.Equal(
            "plan.toml:7:9: target.names[1] = \"XX 9\"; there is no such object",
            plan.Refuse("target.names[1]", "there is no such object").Message
        );
    }

    [Fact]
    public void SettingFaults_OfDeclaredSettings_AreNone()
    {
        var plan = MemoryPlanFiles.Plan(PlanTexts.Least + "[mosaic]\noverlap_fraction = 0.15\n");
        Assert.Null(plan.SettingFaults("mosaic", Declared, []));
        Assert.Null(plan.SettingFaults("rotation", [], []));
    }

    [Theory]
    [InlineData(
        "overlap_fracton = 0.15",
        "plan.toml:9:1: mosaic.overlap_fracton is not known in [mosaic]; did you mean overlap_fraction?"
    )]
    [InlineData(
        "most_panles = 5",
        "plan.toml:9:1: mosaic.most_panles is not known in [mosaic]; did you mean most_panels?"
    )]
    [InlineData(
        "camera_angle_deg = 5",
        "plan.toml:9:1: mosaic.camera_angle_deg is not known in [mosaic]; it belongs in [rotation]"
    )]
    [InlineData(
        "zzz = 5",
        "plan.toml:9:1: mosaic.zzz is not known in [mosaic]; there are overlap, chance_no_gap, most_panels, grid, turn_camera_at_each_panel, shared_errors, centre, overlap_fraction and overlap_least_arcmin"
    )]
    public void SettingFaults_OfAnUnknownKey_SuggestTheNearestOfBoth(string line, string expected)
    {
        var plan = MemoryPlanFiles.Plan(PlanTexts.Least + "[mosaic]\n" + line + "\n");
        Assert.Equal(expected, plan.SettingFaults("mosaic", Declared, [])!.Message);
    }

    [Fact]
    public void SettingFaults_OfAWrongValue_NameItsPlace()
    {
        var plan = MemoryPlanFiles.Plan(PlanTexts.Least + "[mosaic]\noverlap_fraction = 1.0\n");
        var fault = plan.SettingFaults(
            "mosaic",
            Declared,
            [new("overlap_fraction", "give a number from 0 to less than 1")]
        );
        Assert.Equal(
            "plan.toml:9:20: mosaic.overlap_fraction = 1.0; give a number from 0 to less than 1",
            fault!.Message
        );
    }

    [Fact]
    public void SettingFaults_OfAMissingValue_StandAtTheTable()
    {
        var plan = MemoryPlanFiles.Plan(PlanTexts.Least + "[mosaic]\nmost_panels = 5\n");
        var fault = plan.SettingFaults(
            "mosaic",
            Declared,
            [new("overlap_fraction", "give a number from 0 to less than 1")]
        );
        Assert.Equal(
            "plan.toml:8:1: mosaic.overlap_fraction is missing; give a number from 0 to less than 1",
            fault!.Message
        );
    }

    [Fact]
    public void SettingFaults_OfAMisspeltRequiredKey_TellOnlyOfTheSpelling()
    {
        var plan = MemoryPlanFiles.Plan(PlanTexts.Least + "[mosaic]\noverlap_fracton = 0.15\n");
        var fault = plan.SettingFaults(
            "mosaic",
            Declared,
            [new("overlap_fraction", "give a number from 0 to less than 1")]
        );
        Assert.Equal("mosaic.overlap_fracton", Assert.Single(fault!.Errors).Key);
    }

    [Theory]
    [InlineData(
        "overlap_fraction = 1.0",
        "plan.toml:9:20: mosaic.overlap_fraction = 1.0; give a number from 0 to less than 1 (shared part)"
    )]
    [InlineData(
        "overlap_fraction = \"15 %\"",
        "plan.toml:9:20: mosaic.overlap_fraction = \"15 %\"; give a number from 0 to less than 1 (shared part)"
    )]
    [InlineData(
        "overlap_fracton = 0.1",
        "plan.toml:9:1: mosaic.overlap_fracton is not known in [mosaic]; did you mean overlap_fraction?"
    )]
    [InlineData(
        "grid = \"fewest\"",
        "plan.toml:8:1: mosaic.overlap_fraction is missing; give a number from 0 to less than 1 (shared part)"
    )]
    public void SettingsFor_OfAWrongSetting_IsOneLine(string line, string expected)
    {
        var plan = MemoryPlanFiles.Plan(PlanTexts.Least + "[mosaic]\n" + line + "\n");
        Assert.Equal(
            expected,
            Assert.Throws<PlanFileException>(() => plan.SettingsFor(Overlap)).Message
        );
    }

    [Fact]
    public void SettingsFor_OfARightSetting_AreTheSettings()
    {
        var plan = MemoryPlanFiles.Plan(PlanTexts.Least + "[mosaic]\noverlap_fraction = 0\n");
        Assert.Equal(0.0, plan.SettingsFor(Overlap).Number("overlap_fraction"));
    }

    [Fact]
    public void StrategyFrom_OfAnUnknownName_IsOneLine()
    {
        var shelf = PluginShelf.Open();
        var plan = MemoryPlanFiles.Plan(PlanTexts.Least + "[rotation]\nstrategy = \"to-outlin\"\n");
        Assert.Equal(
            "plan.toml:9:12: rotation.strategy = \"to-outlin\"; unknown rotation strategy \"to-outlin\"; no plugin with a strategy for rotation was found",
            Assert
                .Throws<PlanFileException>(() => plan.StrategyFrom(shelf, StrategyKind.Rotation))
                .Message
        );
        Assert.StartsWith(
            "plan.toml: mosaic.overlap (left out): unknown overlap strategy \"fraction\"; ",
            Assert
                .Throws<PlanFileException>(() => plan.StrategyFrom(shelf, StrategyKind.Overlap))
                .Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("rotation", StrategyKind.Rotation)]
    [InlineData("mosaic", StrategyKind.Overlap)]
    public void PlanKeys_AreTheKeysThatThePlanReads(string table, StrategyKind kind)
    {
        var plan = MemoryPlanFiles.Plan(PlanTexts.Least + $"[{table}]\nzzz = 5\n");
        var problem = Assert.Single(plan.SettingFaults(table, [], [])!.Errors).Problem;
        var names = problem[(problem.IndexOf("there are ", StringComparison.Ordinal) + 10)..];
        Assert.Equal(
            PlanKeys.Of(kind).Order(StringComparer.Ordinal),
            names
                .Replace(" and ", ", ", StringComparison.Ordinal)
                .Split(", ")
                .Order(StringComparer.Ordinal)
        );
    }

    private static FoundStrategy Overlap { get; } =
        new()
        {
            Name = "fraction",
            Summary = "shares a part",
            Kind = StrategyKind.Overlap,
            Settings =
            [
                new("overlap_fraction", SettingKind.Number, "shared part")
                {
                    Least = 0.0,
                    Below = 1.0,
                },
            ],
            File = "/plugins/Fraction.dll",
            ContractVersion = new(1, 0),
        };
}
