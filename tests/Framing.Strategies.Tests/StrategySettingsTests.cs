namespace Framing.Strategies.Tests;

public sealed class StrategySettingsTests
{
    private static readonly StrategySettings Settings = new([
        new("overlap_fraction", 0.2),
        new("side", "long"),
        new("turn", true),
    ]);

    [Fact]
    public void Read_DeclaredSettings_GivesTheirValues()
    {
        Assert.Equal(0.2, Settings.Number("overlap_fraction"));
        Assert.Equal("long", Settings.Text("side"));
        Assert.True(Settings.Flag("turn"));
    }

    [Theory]
    [InlineData("overlap")]
    [InlineData("Overlap_fraction")]
    [InlineData("side")]
    public void Number_NotDeclaredAsNumber_ThrowsWithTheKey(string key)
    {
        var exception = Assert.Throws<KeyNotFoundException>(() => Settings.Number(key));

        Assert.Contains($"\"{key}\"", exception.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Constructor_ValuesChangedLater_KeepsItsOwn()
    {
        var values = new Dictionary<string, object>(StringComparer.Ordinal) { ["turn"] = true };
        var settings = new StrategySettings(values);

        values["turn"] = false;

        Assert.True(settings.Flag("turn"));
    }

    [Fact]
    public void None_Always_HoldsNothing() =>
        Assert.Throws<KeyNotFoundException>(() => StrategySettings.None.Flag("turn"));
}
