using Framing.Strategies;

namespace Framing.Workshop;

/// <summary>What came of reading a strategy's settings.</summary>
/// <param name="Settings">The settings with defaults filled in; null when anything is wrong.</param>
/// <param name="Faults">What is wrong; empty when nothing is.</param>
public sealed record SettingsReading(
    StrategySettings? Settings,
    IReadOnlyList<SettingFault> Faults
);
