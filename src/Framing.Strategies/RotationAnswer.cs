using Framing.Sky;

namespace Framing.Strategies;

/// <summary>The answer of a rotation strategy.</summary>
public sealed record RotationAnswer
{
    private RotationAnswer() { }

    /// <summary>Position angle of the displayed picture's up direction; null when refused.</summary>
    public PositionAngle? Angle { get; private init; }

    /// <summary>Why, in a few plain words: "largest margin on all sides"; of a refusal what is missing.</summary>
    public required string Reason { get; init; }

    /// <summary>An angle.</summary>
    /// <param name="angle">Position angle of the displayed picture's up direction.</param>
    /// <param name="reason">Why, in a few plain words.</param>
    /// <returns>The answer.</returns>
    public static RotationAnswer Turn(PositionAngle angle, string reason) =>
        new() { Angle = angle, Reason = reason };

    /// <summary>A refusal.</summary>
    /// <param name="reason">What is missing in the plan, and what would be right.</param>
    /// <returns>The answer.</returns>
    public static RotationAnswer Refuse(string reason) => new() { Reason = reason };
}
