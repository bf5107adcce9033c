using Framing.Strategies;

namespace Framing.Workshop.Tests;

public sealed class StrategySettingsReaderTests
{
    private static readonly FoundStrategy ManySettings = Shelves.Find(
        StrategyKind.Rotation,
        "many-settings"
    );

    private static readonly FoundStrategy Fraction = Shelves.Find(StrategyKind.Overlap, "fraction");

    [Fact]
    public void Read_OnlyWhatIsRequired_FillsInTheDefaults()
    {
        var reading = Read(ManySettings, ("plain", 7L));

        Assert.Empty(reading.Faults);
        Assert.Equal("7 0 1 2 2.5 long [] True", Say(reading.Settings));
    }

    [Fact]
    public void Read_EverySetting_IsTakenAsWritten()
    {
        var reading = Read(
            ManySettings,
            ("plain", -1.5e300),
            ("least_deg", -5L),
            ("most_deg", 5),
            ("both_deg", 2.5),
            ("below", 2.9999999999999996),
            ("side", "short"),
            ("label", "near\u00a0the ridge"),
            ("turn", false)
        );

        Assert.Empty(reading.Faults);
        Assert.Equal(
            "-1.5E+300 -5 5 2.5 2.9999999999999996 short [near the ridge] False",
            Say(reading.Settings)
        );
    }

    [Theory]
    [InlineData("plain", double.NaN, "plain = nan is not a number (any number)")]
    [InlineData("plain", double.NegativeInfinity, "plain = -inf is not a number (any number)")]
    [InlineData("plain", "12", "plain = \"12\" is not a number (any number)")]
    [InlineData("plain", true, "plain = true is not a number (any number)")]
    [InlineData(
        "least_deg",
        -5.0000001,
        "least_deg = -5.0000001 is not a number, -5 or more (a number with a floor)"
    )]
    [InlineData(
        "most_deg",
        6L,
        "most_deg = 6 is not a number, 5 or less (a number with a ceiling)"
    )]
    [InlineData("both_deg", 0.5, "both_deg = 0.5 is not a number from 1 to 2.5 (a number between)")]
    [InlineData("below", 3L, "below = 3 is not a number, less than 3 (a number below)")]
    [InlineData("side", "Long", "side = \"Long\" is not \"long\" or \"short\" (which side)")]
    [InlineData("side", 1L, "side = 1 is not \"long\" or \"short\" (which side)")]
    [InlineData("label", false, "label = false is not a text (any text)")]
    [InlineData("turn", "true", "turn = \"true\" is not true or false (whether to turn)")]
    [InlineData("label", new[] { "a", "b" }, "label = a list is not a text (any text)")]
    public void Read_WrongValue_SaysKeyValueAndWhatWouldBeRight(
        string key,
        object value,
        string expected
    )
    {
        var values = new Dictionary<string, object>(StringComparer.Ordinal) { ["plain"] = 0L };
        values[key] = value;

        var reading = StrategySettingsReader.Read(ManySettings, values);

        Assert.Null(reading.Settings);
        Assert.Equal(new SettingFault(key, expected), Assert.Single(reading.Faults));
    }

    [Theory]
    [InlineData(
        1.0,
        "overlap_fraction = 1 is not a number from 0 to less than 1 (shared part of the panel's width and height; 0.15 is 15 %)"
    )]
    [InlineData(
        100L,
        "overlap_fraction = 100 is not a number from 0 to less than 1 (shared part of the panel's width and height; 0.15 is 15 %)"
    )]
    [InlineData(
        -0.1,
        "overlap_fraction = -0.1 is not a number from 0 to less than 1 (shared part of the panel's width and height; 0.15 is 15 %)"
    )]
    [InlineData(
        "100 %",
        "overlap_fraction = \"100 %\" is not a number from 0 to less than 1 (shared part of the panel's width and height; 0.15 is 15 %)"
    )]
    public void Read_OverlapOfAWholePanel_IsRefusedInOneLine(object value, string expected) =>
        Assert.Equal(
            expected,
            Assert.Single(Read(Fraction, ("overlap_fraction", value)).Faults).Problem
        );

    [Theory]
    [InlineData("overlap_fractoin", "unknown key overlap_fractoin; did you mean overlap_fraction?")]
    [InlineData("overlap-fraction", "unknown key overlap-fraction; did you mean overlap_fraction?")]
    [InlineData("most_panel", "unknown key most_panel; did you mean most_panels?")]
    [InlineData("colour", "unknown key colour; the strategy \"fraction\" has overlap_fraction")]
    public void Read_UnknownKey_SuggestsTheNearest(string key, string expected) =>
        Assert.Equal(
            new SettingFault(key, expected),
            Assert.Single(Read(Fraction, (key, 0.1)).Faults)
        );

    [Fact]
    public void Read_UnknownKeyWhereThereAreNoSettings_SaysSo() =>
        Assert.Equal(
            "unknown key margin_px; the strategy \"north-up\" has no settings",
            Assert
                .Single(
                    Read(Shelves.Find(StrategyKind.Rotation, "north-up"), ("margin_px", 1L)).Faults
                )
                .Problem
        );

    [Fact]
    public void Read_MissingAndWrong_ReportsBoth()
    {
        var reading = Read(ManySettings, ("turn", 1L), ("sied", "long"));

        Assert.Null(reading.Settings);
        Assert.Equal(
            [
                new("turn", "turn = 1 is not true or false (whether to turn)"),
                new("sied", "unknown key sied; did you mean side?"),
                new(
                    "plain",
                    "the strategy \"many-settings\" needs plain: a number (any number)",
                    IsMissing: true
                ),
            ],
            reading.Faults
        );
    }

    private static SettingsReading Read(
        FoundStrategy strategy,
        params (string Key, object Value)[] values
    ) =>
        StrategySettingsReader.Read(
            strategy,
            values.ToDictionary(value => value.Key, value => value.Value, StringComparer.Ordinal)
        );

    /// <summary>What the plugin itself reads from its settings.</summary>
    private static string Say(StrategySettings? settings)
    {
        using var strategy = PluginShelf.LoadRotation(ManySettings, out _);
        return strategy!.Choose(Questions.Rotation(settings: settings)).Reason;
    }
}
