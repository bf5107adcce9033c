namespace Framing.Planning;

/// <summary>What is to be added up.</summary>
public sealed record TallyRequest
{
    /// <summary>The framing, with panels.</summary>
    public required FramedPlan Plan { get; init; }

    /// <summary>What each panel is to have; one entry a filter, one without a name where the plan names no filter.</summary>
    public required IReadOnlyList<TallyGoal> Goals { get; init; }

    /// <summary>Share of the subs that will be thrown away, 0 to less than 1.</summary>
    public required double ExpectedLoss { get; init; }

    /// <summary>The frames of all nights and rigs, in any order; one that is there twice counts once.</summary>
    public required IReadOnlyList<ShotFrame> Frames { get; init; }
}
