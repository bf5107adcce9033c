namespace Framing.Strategies;

/// <summary>Declares a setting that stands beside a strategy's name in the plan file. May stand several times.</summary>
/// <param name="name">The key: small letters and underscores, ending in its unit where it has one (<c>_deg</c>).</param>
/// <param name="kind">What it holds.</param>
/// <param name="summary">What it means, one line with the unit, without a full stop.</param>
/// <remarks>
/// The host refuses a plan whose setting is unknown, of the wrong kind, out of range or missing, with a line that says
/// so, before the strategy is asked.
/// </remarks>
[AttributeUsage(AttributeTargets.Class, AllowMultiple = true, Inherited = false)]
public sealed class StrategySettingAttribute(string name, SettingKind kind, string summary)
    : Attribute
{
    /// <summary>The key in the plan file.</summary>
    public string Name { get; } = name;

    /// <summary>What it holds.</summary>
    public SettingKind Kind { get; } = kind;

    /// <summary>What it means.</summary>
    public string Summary { get; } = summary;

    /// <summary>The value taken when the plan does not give one, as it would stand in the plan; null when required.</summary>
    /// <remarks>Without quotes: <c>0.15</c>, <c>long</c>, <c>true</c>.</remarks>
    public string? Default { get; init; }

    /// <summary>The least number allowed.</summary>
    public double Least { get; init; } = double.NegativeInfinity;

    /// <summary>The greatest number allowed.</summary>
    public double Most { get; init; } = double.PositiveInfinity;

    /// <summary>A number is less than this, where the limit itself is not allowed.</summary>
    public double Below { get; init; } = double.PositiveInfinity;

    /// <summary>The texts allowed, parted by "|"; null when any.</summary>
    public string? Choices { get; init; }
}
