namespace Framing.Sky.Tests;

/// <summary>A number of decimals that a property test tries.</summary>
public readonly record struct DecimalCount(int Value);
