using Framing.Nights;
using Framing.Planning;

namespace Framing.Workshop;

/// <summary>A plan as it lies on the desk at one moment: its text and what comes of it.</summary>
public sealed record DeskPlan
{
    /// <summary>The text of the plan file.</summary>
    public required string Text { get; init; }

    /// <summary>Names this state of the text: the same text has the same mark. A change says which state it is made to.</summary>
    public required string Mark { get; init; }

    /// <summary>What the text asks for.</summary>
    public required PlanFile File { get; init; }

    /// <summary>What comes of it.</summary>
    public required FramedPlan Plan { get; init; }

    /// <summary>The nights; null where the plan names no site.</summary>
    public required PlannedNights? Nights { get; init; }

    /// <summary>The report, the text of report.json as <c>framing plan --json</c> prints it.</summary>
    public required string Report { get; init; }

    /// <summary>The evening for which coordinates are given.</summary>
    public required DateOnly Evening { get; init; }

    /// <summary>What the user should know beside the plan's own warnings.</summary>
    public required IReadOnlyList<string> Messages { get; init; }
}
