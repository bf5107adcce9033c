namespace Framing.Planning;

/// <summary>What one panel is to have through one filter.</summary>
/// <param name="Filter">The filter; empty where the plan names none.</param>
/// <param name="SubSeconds">The exposure of one sub; 0 where the plan names none.</param>
/// <param name="Seconds">The exposure wanted in all.</param>
public sealed record TallyGoal(string Filter, double SubSeconds, double Seconds);
