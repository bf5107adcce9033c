namespace Framing.Planning;

/// <summary>What became of a request: a framing, or a strategy's refusal.</summary>
public sealed record FramingOutcome
{
    private FramingOutcome() { }

    /// <summary>The framing; null when a strategy refused.</summary>
    public FramedPlan? Plan { get; private init; }

    /// <summary>What is missing in the plan, in one line that names the strategy; null when there is a framing.</summary>
    public string? Refusal { get; private init; }

    internal static FramingOutcome Of(FramedPlan plan) => new() { Plan = plan };

    internal static FramingOutcome Refused(string strategy, string reason) =>
        new() { Refusal = $"strategy \"{strategy}\": {reason}" };
}
