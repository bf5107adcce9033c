using Framing.Sky;
using Framing.Strategies;

namespace Framing.Workshop.Tests;

/// <summary>The plugin under samples/ that a newcomer copies, as the build made it.</summary>
public sealed class SampleStrategyTests
{
    [Fact]
    public void Open_TheSample_ListsItWithItsSettings()
    {
        var shelf = PluginShelf.Open(Shelves.SamplePlugins);

        Assert.Empty(shelf.Faults);
        var found = Assert.Single(shelf.Strategies);
        Assert.Equal("ring-marks", found.Name);
        Assert.Equal(
            ["ring_step_deg: a number from 1 to 90", "first_mark_deg: a number"],
            found.Settings.Select(setting =>
                $"{setting.Name}: {StrategySettingsReader.Wanted(setting)}"
            )
        );
    }

    [Theory]
    [InlineData(15L, 0L, null, 105.0)]
    [InlineData(15L, 7L, null, 97.0)]
    [InlineData(15L, 0L, 300.0, 285.0)]
    [InlineData(90L, 0L, null, 90.0)]
    public void Choose_OfTheMarks_TakesTheBestAndTheNearerOfOpposites(
        long step,
        long first,
        double? present,
        double expected
    )
    {
        using var strategy = Load(
            out var settings,
            ("ring_step_deg", step),
            ("first_mark_deg", first)
        );

        var answer = strategy.Choose(
            Questions.Rotation(
                settings: settings,
                present: present is { } degrees ? PositionAngle.FromDegrees(degrees) : null,
                panels: new BestAt(100.0)
            )
        );

        Assert.Equal(expected, answer.Angle!.Value.Degrees, 9);
    }

    [Fact]
    public void Choose_TooManyPanelsAtEveryMark_RefusesInWords()
    {
        using var strategy = Load(out var settings);

        var answer = strategy.Choose(
            Questions.Rotation(settings: settings, panels: new BestAt(100.0)) with
            {
                MostPanels = 1,
            }
        );

        Assert.Null(answer.Angle);
        Assert.Null(strategy.Fault);
        Assert.Equal(
            "at no mark of the ring are 1 panels enough; raise most_panels",
            answer.Reason
        );
    }

    private static LoadedRotation Load(
        out StrategySettings? settings,
        params (string Key, object Value)[] values
    )
    {
        var found = PluginShelf.Open(Shelves.SamplePlugins).Strategies[0];
        var reading = StrategySettingsReader.Read(
            found,
            values.ToDictionary(value => value.Key, value => value.Value, StringComparer.Ordinal)
        );
        Assert.Empty(reading.Faults);
        settings = reading.Settings;
        var strategy = PluginShelf.LoadRotation(found, out var fault);
        Assert.Null(fault);
        return strategy!;
    }

    /// <summary>Two panels at every angle; the margin is widest at one angle and falls off with the turn from it.</summary>
    private sealed class BestAt(double degrees) : IPanelCount
    {
        public PanelCount At(PositionAngle angle) =>
            new(2, 1, -angle.FrameTurnTo(PositionAngle.FromDegrees(degrees)).Magnitude.Radians);
    }
}
