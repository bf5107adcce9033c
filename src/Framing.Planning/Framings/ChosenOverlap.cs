using Framing.Strategies;

namespace Framing.Planning;

/// <summary>An overlap strategy that a plan has chosen.</summary>
/// <param name="Name">Its name in the plan.</param>
/// <param name="Strategy">The strategy itself.</param>
/// <param name="Settings">Its settings from the plan, checked.</param>
public sealed record ChosenOverlap(
    string Name,
    IOverlapStrategy Strategy,
    StrategySettings Settings
);
