namespace Framing.Workshop;

/// <summary>A strategy named in the plan, and the keys beside it that are not the table's own.</summary>
/// <param name="Name">The strategy's name.</param>
/// <param name="Settings">
/// By key a double, string or bool as written. Whether the strategy declares them is not known here; see
/// <see cref="PlanFile.SettingsFor"/>.
/// </param>
public sealed record StrategyChoice(string Name, IReadOnlyDictionary<string, object> Settings);
