using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>What a mosaic covers.</summary>
public sealed record MosaicCoverage
{
    /// <summary>The sky that at least one panel covers.</summary>
    public required SolidAngle Area { get; init; }

    /// <summary>The sky that exactly 1, 2, 3… panels cover: how deep the exposure is where panels overlap.</summary>
    public required IReadOnlyList<SolidAngle> AreaByDepth { get; init; }

    /// <summary>The target's own area, parts that lie over each other counted once.</summary>
    public required SolidAngle TargetArea { get; init; }

    /// <summary>The part of the target that at least one panel covers, 0 to 1; of a target without area the part of its corners.</summary>
    public required double TargetCoveredFraction { get; init; }

    /// <summary>The pieces of the target that no panel covers.</summary>
    public required IReadOnlyList<SkyRegion> Uncovered { get; init; }

    /// <summary>Every pair of neighbours: those of the rows first, in reading order.</summary>
    public required IReadOnlyList<SharedSide> SharedSides { get; init; }

    /// <summary>
    /// The gaps: what no panel covers between the facing sides of neighbours, over the length on which they face each
    /// other, and holes enclosed by panels.
    /// </summary>
    public required IReadOnlyList<SkyRegion> Gaps { get; init; }

    /// <summary>The area of all gaps, enclosed holes included.</summary>
    public required SolidAngle GapArea { get; init; }

    /// <summary>
    /// The area of the holes that are enclosed by panels: less than half of the sky, and no way leads out between the panels
    /// to the place opposite the mosaic's middle.
    /// </summary>
    public required SolidAngle EnclosedHoleArea { get; init; }

    /// <summary>The least depth of overlap of any two neighbours; null for a single panel.</summary>
    public Angle? LeastOverlap => Least(SharedSides);

    /// <summary>The least depth of overlap of neighbours in a row; null for a single column.</summary>
    public Angle? LeastOverlapInRows => Least(SharedSides.Where(side => side.SideBySide));

    /// <summary>The least depth of overlap of neighbours one above the other; null for a single row.</summary>
    public Angle? LeastOverlapInColumns => Least(SharedSides.Where(side => !side.SideBySide));

    private static Angle? Least(IEnumerable<SharedSide> sides) =>
        sides.MinBy(side => side.LeastDepth)?.LeastDepth;
}
