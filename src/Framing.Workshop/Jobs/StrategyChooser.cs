namespace Framing.Workshop;

/// <summary>Finds and loads the strategies that a plan names.</summary>
internal static class StrategyChooser
{
    public static ChosenPlugin<LoadedRotation> Rotation(PluginShelf shelf, PlanFile file)
    {
        var choice = file.Rotation.Strategy;
        var (found, settings) = Find(
            shelf,
            file,
            StrategyKind.Rotation,
            "rotation",
            "strategy",
            choice
        );
        var loaded =
            PluginShelf.LoadRotation(found, out var fault) ?? throw new InputException(fault!.Line);
        return new(choice.Name, loaded, settings);
    }

    public static ChosenPlugin<LoadedOverlap> Overlap(PluginShelf shelf, PlanFile file)
    {
        var choice = file.Mosaic.Overlap;
        var (found, settings) = Find(
            shelf,
            file,
            StrategyKind.Overlap,
            "mosaic",
            "overlap",
            choice
        );
        var loaded =
            PluginShelf.LoadOverlap(found, out var fault) ?? throw new InputException(fault!.Line);
        return new(choice.Name, loaded, settings);
    }

    private static (FoundStrategy Found, Framing.Strategies.StrategySettings Settings) Find(
        PluginShelf shelf,
        PlanFile file,
        StrategyKind kind,
        string table,
        string key,
        StrategyChoice choice
    )
    {
        var found = shelf.Find(kind, choice.Name, out var problem);
        if (found is null)
        {
            throw file.Refuse(table + "." + key, problem!);
        }

        var reading = StrategySettingsReader.Read(found, choice.Settings);
        var declared = found.Settings.Select(setting => setting.Name).ToList();
        var faults = reading
            .Faults.Where(fault => declared.Contains(fault.Key, StringComparer.Ordinal))
            .Select(fault => KeyValuePair.Create(fault.Key, fault.Problem));
        if (file.SettingFaults(table, declared, faults) is { } refusal)
        {
            throw refusal;
        }

        return (found, reading.Settings!);
    }
}
