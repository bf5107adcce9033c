namespace Framing.Strategies;

[AttributeUsage(AttributeTargets.Class)]
public sealed class StrategyAttribute(string name, string summary) : Attribute
{
    public string Name { get; } = name;

    public string Summary { get; } = summary;
}
