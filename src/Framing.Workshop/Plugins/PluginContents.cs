namespace Framing.Workshop;

/// <summary>What the metadata of one file holds.</summary>
/// <param name="Strategies">The strategies that may be used.</param>
/// <param name="Faults">What may not, and why.</param>
/// <param name="IsLibrary">True for a sound assembly that does not use the contract: something that a plugin needs.</param>
internal sealed record PluginContents(
    IReadOnlyList<FoundStrategy> Strategies,
    IReadOnlyList<PluginFault> Faults,
    bool IsLibrary = false
);
