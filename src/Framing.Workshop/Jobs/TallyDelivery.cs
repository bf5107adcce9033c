using Framing.Planning;

namespace Framing.Workshop;

/// <summary>What became of a tally.</summary>
/// <param name="Tally">All frames so far against the plan; null when the plan has no panels.</param>
/// <param name="Messages">What the user should know.</param>
/// <param name="Impossible">Why there is no tally; null when there is one.</param>
public sealed record TallyDelivery(
    PlanTally? Tally,
    IReadOnlyList<string> Messages,
    string? Impossible
);
