using Framing.Nights;

namespace Framing.Workshop;

/// <summary>The battery and what hangs on it: [power].</summary>
/// <param name="BatteryWattHours">What the battery holds when full and warm, in Wh, more than 0.</param>
/// <param name="Chemistry">What it is made of.</param>
/// <param name="Loads">What draws on it.</param>
public sealed record PowerSection(
    double BatteryWattHours,
    BatteryChemistry Chemistry,
    IReadOnlyList<PowerLoad> Loads
);
