namespace Framing.Cli.Tests;

public sealed class StrategiesCommandTests
{
    private static readonly string[] Rotations =
    [
        "along-outline",
        "at-angle",
        "keep-camera-angle",
        "north-up",
        "to-outline",
    ];

    private static readonly string[] Overlaps =
    [
        "arcminutes",
        "for-pointing",
        "for-registration",
        "fraction",
    ];

    [Fact]
    public void Strategies_ListsAllWithTheirPlugin()
    {
        using var session = new Session();
        var outcome = session.Run("strategies");
        Assert.Equal(0, outcome.Code);
        Assert.Equal(string.Empty, outcome.Error);
        Assert.All(
            Rotations.Concat(Overlaps),
            name => Assert.Contains(name, outcome.Output, StringComparison.Ordinal)
        );
        Assert.Contains("overlap_fraction", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Strategies_AsJson_NamesKindPluginAndSettings()
    {
        using var session = new Session();
        var strategies = session.Run("strategies", "--json").Json().GetProperty("strategies");
        foreach (var (kind, names) in new[] { ("rotation", Rotations), ("overlap", Overlaps) })
        {
            var found = strategies
                .EnumerateArray()
                .Where(strategy => strategy.GetProperty("kind").GetString() == kind)
                .Select(strategy => strategy.GetProperty("name").GetString());
            Assert.Superset(
                names.ToHashSet(StringComparer.Ordinal),
                found.ToHashSet(StringComparer.Ordinal)!
            );
        }

        var fraction = strategies
            .EnumerateArray()
            .Single(strategy => strategy.GetProperty("name").GetString() == "fraction");
        Assert.Equal(
            "0.15",
            fraction.GetProperty("settings")[0].GetProperty("default").GetString()
        );
        Assert.Equal(1.0, fraction.GetProperty("settings")[0].GetProperty("below").GetDouble());
        Assert.Equal("OverlapFixed", fraction.GetProperty("plugin").GetString());
    }

    [Theory]
    [InlineData("strategies")]
    [InlineData("plan")]
    public void Plugins_InAFolderThatIsNotThere_EndInOneLineAndTwo(string command)
    {
        using var session = new Session();
        var outcome = session.Run(command, "--plugins", "nowhere");
        Assert.Equal(2, outcome.Code);
        Assert.Empty(session.Files());
        Assert.Contains(
            "nowhere",
            Assert.Single(outcome.Error.TrimEnd('\n').Split('\n')),
            StringComparison.Ordinal
        );
        Assert.Equal(string.Empty, outcome.Output);
    }
}
