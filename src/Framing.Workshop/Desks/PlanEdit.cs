namespace Framing.Workshop;

/// <summary>One change to a plan.</summary>
/// <param name="Key">The key with its table, <c>mosaic.grid</c>; tables of a list count from 1, <c>night.filter[1].sub_s</c>.</param>
/// <param name="Value">The value as TOML has it, <c>"fewest"</c> with its quotes or <c>[2, 1]</c>; null to take the key away.</param>
public sealed record PlanEdit(string Key, string? Value);
