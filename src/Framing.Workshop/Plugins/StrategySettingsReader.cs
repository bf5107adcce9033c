using Framing.Strategies;

namespace Framing.Workshop;

/// <summary>Reads the settings that stand beside a strategy's name in a plan file against what the strategy declares.</summary>
public static class StrategySettingsReader
{
    /// <summary>Reads the settings of one strategy.</summary>
    /// <param name="strategy">The strategy chosen.</param>
    /// <param name="values">
    /// The values beside its name as the file has them (long, double, string, bool; anything else is of the wrong kind),
    /// without the plan's own keys (<see cref="PlanKeys"/>).
    /// </param>
    /// <returns>The settings with defaults filled in, or everything that is wrong, in the order of the values.</returns>
    public static SettingsReading Read(
        FoundStrategy strategy,
        IReadOnlyDictionary<string, object> values
    )
    {
        ArgumentNullException.ThrowIfNull(strategy);
        ArgumentNullException.ThrowIfNull(values);
        var taken = new Dictionary<string, object>(StringComparer.Ordinal);
        var faults = new List<SettingFault>();
        foreach (var (key, value) in values)
        {
            var setting = strategy.Settings.FirstOrDefault(declared =>
                string.Equals(declared.Name, key, StringComparison.Ordinal)
            );
            if (setting is null)
            {
                faults.Add(new(key, Unknown(strategy, key)));
            }
            else if (SettingValue.TryTake(setting, value, out var checkedValue))
            {
                taken[key] = checkedValue;
            }
            else
            {
                faults.Add(
                    new(
                        key,
                        $"{key} = {SettingValue.Written(value)} is not {SettingValue.Wanted(setting)} ({setting.Summary})"
                    )
                );
            }
        }

        foreach (
            var setting in strategy.Settings.Where(declared => !values.ContainsKey(declared.Name))
        )
        {
            if (setting.Default is null)
            {
                faults.Add(
                    new(
                        setting.Name,
                        $"the strategy \"{strategy.Name}\" needs {setting.Name}: {SettingValue.Wanted(setting)} ({setting.Summary})",
                        IsMissing: true
                    )
                );
            }
            else if (SettingValue.TryParseDefault(setting, out var value))
            {
                taken[setting.Name] = value;
            }
        }

        return faults.Count == 0 ? new(new StrategySettings(taken), []) : new(null, faults);
    }

    /// <summary>What a setting takes, in words: "a number from 0 to less than 1", "\"long\" or \"short\"".</summary>
    /// <param name="setting">The declaration.</param>
    /// <returns>The words.</returns>
    public static string Wanted(StrategySettingAttribute setting)
    {
        ArgumentNullException.ThrowIfNull(setting);
        return SettingValue.Wanted(setting);
    }

    private static string Unknown(FoundStrategy strategy, string key)
    {
        var names = strategy.Settings.Select(setting => setting.Name).ToList();
        var known = names.Concat(PlanKeys.Of(strategy.Kind));
        return NearestName.Among(key, known) is { } nearest
                ? $"unknown key {OneLine.Of(key)}; did you mean {nearest}?"
            : names.Count == 0
                ? $"unknown key {OneLine.Of(key)}; the strategy \"{strategy.Name}\" has no settings"
            : $"unknown key {OneLine.Of(key)}; the strategy \"{strategy.Name}\" has {string.Join(", ", names)}";
    }
}
