using Framing.Nights;

namespace Framing.Workshop;

/// <summary>The battery and what hangs on it: [power].</summary>
/// <param name="BatteryWattHours">What the battery holds when full and warm, in Wh, more than 0.</param>
/// <param name="Chemistry">What it is made of.</param>
/// <param name="UsableFraction">The share that may be drawn without harming it, above 0, at most 1.</param>
/// <param name="SpareFraction">The share of that which is kept for packing up, 0 to less than 1.</param>
/// <param name="Loads">What draws on it.</param>
public sealed record PowerSection(
    double BatteryWattHours,
    BatteryChemistry Chemistry,
    double UsableFraction,
    double SpareFraction,
    IReadOnlyList<PowerLoad> Loads
);
