namespace Framing.Strategies;

/// <summary>Names a strategy. Read from the plugin's metadata, without running any of its code.</summary>
/// <param name="name">The name used in plan files: small letters and hyphens.</param>
/// <param name="summary">What it does, one line in plain words, without a full stop.</param>
[AttributeUsage(AttributeTargets.Class, Inherited = false)]
public sealed class StrategyAttribute(string name, string summary) : Attribute
{
    /// <summary>The name used in plan files.</summary>
    public string Name { get; } = name;

    /// <summary>What it does, one line in plain words.</summary>
    public string Summary { get; } = summary;
}
