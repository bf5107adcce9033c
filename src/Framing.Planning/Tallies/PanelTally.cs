using Framing.Sky;

namespace Framing.Planning;

/// <summary>What one panel has so far.</summary>
/// <param name="Panel">The panel.</param>
/// <param name="ByFilter">What it has, by filter and length of the subs.</param>
/// <param name="CoveredFraction">The part of it that at least one counted frame covers, 0 to 1.</param>
/// <param name="GoalFraction">The part of its goal that is reached, all filters weighed by their goals, 0 to 1.</param>
/// <param name="Shots">The counted frames.</param>
public sealed record PanelTally(
    PlannedPanel Panel,
    IReadOnlyList<FilterTally> ByFilter,
    double CoveredFraction,
    double GoalFraction,
    IReadOnlyList<ShotFrame> Shots
);
