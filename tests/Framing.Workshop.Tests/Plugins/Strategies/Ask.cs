using Framing.Mosaics;
using Framing.Sky;
using Framing.Strategies;

namespace Framing.Workshop.Tests;

/// <summary>Asks the strategies that come with the program, the way the program does: found, settings checked, loaded.</summary>
internal static class Ask
{
    public static RotationAnswer Rotation(
        string name,
        RotationQuestion question,
        params (string Key, object Value)[] settings
    )
    {
        var found = Found(StrategyKind.Rotation, name);
        using var strategy = PluginShelf.LoadRotation(found, out var fault);
        Assert.Null(fault);
        var answer = strategy!.Choose(question with { Settings = Checked(found, settings) });
        Assert.Null(strategy.Fault);
        Assert.NotEmpty(answer.Reason);
        return answer;
    }

    public static OverlapAnswer Overlap(
        string name,
        OverlapQuestion question,
        params (string Key, object Value)[] settings
    )
    {
        var found = Found(StrategyKind.Overlap, name);
        using var strategy = PluginShelf.LoadOverlap(found, out var fault);
        Assert.Null(fault);
        var answer = strategy!.Choose(question with { Settings = Checked(found, settings) });
        Assert.Null(strategy.Fault);
        Assert.NotEmpty(answer.Reason);
        return answer;
    }

    /// <summary>The angle answered, in degrees.</summary>
    public static double Degrees(
        string name,
        RotationQuestion question,
        params (string Key, object Value)[] settings
    ) => Rotation(name, question, settings).Angle!.Value.Degrees;

    private static FoundStrategy Found(StrategyKind kind, string name) =>
        Shelves.Find(PluginShelf.Open(PluginShelf.FolderBesideProgram), kind, name);

    private static StrategySettings Checked(
        FoundStrategy found,
        (string Key, object Value)[] settings
    )
    {
        var reading = StrategySettingsReader.Read(
            found,
            settings.ToDictionary(value => value.Key, value => value.Value, StringComparer.Ordinal)
        );
        Assert.Empty(reading.Faults);
        return reading.Settings!;
    }
}
