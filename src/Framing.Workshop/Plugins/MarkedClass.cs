using System.Reflection.Metadata;
using Framing.Strategies;

namespace Framing.Workshop;

/// <summary>A class in a plugin's metadata that carries attributes of the contract.</summary>
/// <param name="Class">The class.</param>
internal sealed record MarkedClass(TypeDefinitionHandle Class)
{
    /// <summary>What [Strategy] says; null when the class only carries settings.</summary>
    public StrategyAttribute? Strategy { get; set; }

    /// <summary>What each [StrategySetting] says; null for one that this program cannot read.</summary>
    public List<StrategySettingAttribute?> Settings { get; } = [];
}
