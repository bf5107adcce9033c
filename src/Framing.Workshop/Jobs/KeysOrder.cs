namespace Framing.Workshop;

/// <summary>What key the user wants to learn from which frames.</summary>
public sealed record KeysOrder
{
    /// <summary>The plan file.</summary>
    public required string PlanPath { get; init; }

    /// <summary>The frame before.</summary>
    public required string Before { get; init; }

    /// <summary>The frame after.</summary>
    public required string After { get; init; }

    /// <summary>The folder that relative paths of frames start from.</summary>
    public required string WorkingFolder { get; init; }

    /// <summary>The key that was held: east, west, north, south, or what is printed on it.</summary>
    public required string Pressed { get; init; }

    /// <summary>How long, more than 0.</summary>
    public required double Seconds { get; init; }

    /// <summary>The label of the speed; null to tell it from the motion.</summary>
    public string? Speed { get; init; }
}
