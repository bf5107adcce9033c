using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>What is to be photographed: [target]. Either names, which the catalogue knows, or an outline.</summary>
public sealed record TargetSection
{
    /// <summary>Names that make one target together; empty when the plan gives an outline or a box.</summary>
    public required IReadOnlyList<string> Names { get; init; }

    /// <summary>The outline of a box or of an outline file; null when the plan gives names.</summary>
    public required SkyOutline? Outline { get; init; }

    /// <summary>The box that <see cref="Outline"/> was made of; null when the plan gives names or an outline file.</summary>
    public required TargetBox? Box { get; init; }

    /// <summary>Sky kept around the target on every side, beyond what dithering needs.</summary>
    public required Angle Margin { get; init; }
}
