namespace Framing.Strategies;

/// <summary>The settings of one strategy, checked against its declarations, defaults filled in.</summary>
public sealed class StrategySettings
{
    private readonly Dictionary<string, object> values;

    /// <summary>Makes settings from checked values.</summary>
    /// <param name="values">A double, string or bool for each declared key.</param>
    public StrategySettings(IEnumerable<KeyValuePair<string, object>> values) =>
        this.values = new(values, StringComparer.Ordinal);

    /// <summary>No settings.</summary>
    public static StrategySettings None { get; } = new([]);

    /// <summary>A number.</summary>
    /// <param name="name">A declared key of kind <see cref="SettingKind.Number"/>.</param>
    /// <returns>The value.</returns>
    /// <exception cref="KeyNotFoundException">The strategy does not declare such a setting.</exception>
    public double Number(string name) => Value<double>(name);

    /// <summary>A text.</summary>
    /// <param name="name">A declared key of kind <see cref="SettingKind.Text"/>.</param>
    /// <returns>The value.</returns>
    /// <exception cref="KeyNotFoundException">The strategy does not declare such a setting.</exception>
    public string Text(string name) => Value<string>(name);

    /// <summary>True or false.</summary>
    /// <param name="name">A declared key of kind <see cref="SettingKind.Flag"/>.</param>
    /// <returns>The value.</returns>
    /// <exception cref="KeyNotFoundException">The strategy does not declare such a setting.</exception>
    public bool Flag(string name) => Value<bool>(name);

    private T Value<T>(string name) =>
        values.TryGetValue(name, out var value) && value is T typed
            ? typed
            : throw new KeyNotFoundException(
                $"No setting \"{name}\" of this kind is declared by the strategy."
            );
}
