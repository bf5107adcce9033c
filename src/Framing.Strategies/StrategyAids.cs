namespace Framing.Strategies;

/// <summary>What a strategy may ask back while it thinks.</summary>
/// <remarks>Later versions may add more; none is taken away within a major version.</remarks>
public sealed record StrategyAids
{
    /// <summary>How many panels an angle needs.</summary>
    public required IPanelCount Panels { get; init; }

    /// <summary>How likely an overlap is to close.</summary>
    public required IGapChance Gaps { get; init; }

    /// <summary>How many stars an area holds.</summary>
    public required IStarCount Stars { get; init; }

    /// <summary>How many stars neighbouring panels have in common.</summary>
    public required ISharedStars SharedStars { get; init; }
}
