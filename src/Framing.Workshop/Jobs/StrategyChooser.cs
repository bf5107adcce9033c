namespace Framing.Workshop;

/// <summary>Finds and loads the strategies that a plan names.</summary>
internal static class StrategyChooser
{
    public static ChosenPlugin<LoadedRotation> Rotation(PluginShelf shelf, PlanFile file)
    {
        var found = file.StrategyFrom(shelf, StrategyKind.Rotation);
        var settings = file.SettingsFor(found);
        var loaded =
            PluginShelf.LoadRotation(found, out var fault) ?? throw new InputException(fault!.Line);
        return new(found.Name, loaded, settings);
    }

    public static ChosenPlugin<LoadedOverlap> Overlap(PluginShelf shelf, PlanFile file)
    {
        var found = file.StrategyFrom(shelf, StrategyKind.Overlap);
        var settings = file.SettingsFor(found);
        var loaded =
            PluginShelf.LoadOverlap(found, out var fault) ?? throw new InputException(fault!.Line);
        return new(found.Name, loaded, settings);
    }
}
