namespace Framing.Nights;

/// <summary>Something that draws power.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Watts">What it draws in W while it is on.</param>
/// <param name="Duty">Share of the time it is on, 0 to 1.</param>
public sealed record PowerLoad(string Name, double Watts, double Duty);
