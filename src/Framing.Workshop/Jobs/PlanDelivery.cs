using Framing.Nights;
using Framing.Planning;

namespace Framing.Workshop;

/// <summary>What became of an order.</summary>
/// <param name="Plan">The framing.</param>
/// <param name="Notes">What goes beside the framing for its evening; null when the thing asked for cannot be.</param>
/// <param name="Nights">The nights; null where the plan names no site, or the framing cannot be.</param>
/// <param name="Report">The text of report.json.</param>
/// <param name="Folder">Where the files lie; null when the thing asked for cannot be and nothing was written.</param>
/// <param name="Files">The names of the files written.</param>
/// <param name="Messages">What the user should know beside the plan's own warnings.</param>
public sealed record PlanDelivery(
    FramedPlan Plan,
    EveningNotes? Notes,
    PlannedNights? Nights,
    string Report,
    string? Folder,
    IReadOnlyList<string> Files,
    IReadOnlyList<string> Messages
);
