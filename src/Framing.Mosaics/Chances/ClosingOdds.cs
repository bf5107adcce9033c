using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>How often a mosaic closed when it was drawn many times with its errors.</summary>
public sealed record ClosingOdds
{
    /// <summary>How many mosaics were drawn.</summary>
    public required int Trials { get; init; }

    /// <summary>
    /// The part of them without a gap, 0 to 1: between facing sides of neighbours, over the length on which they face each
    /// other, and no enclosed hole.
    /// </summary>
    public required double ChanceNoGap { get; init; }

    /// <summary>The part of them that covered the whole target, 0 to 1; null when no target was given.</summary>
    public required double? ChanceTargetCovered { get; init; }

    /// <summary>The mean area of all gaps of a mosaic, those without a gap counted as none.</summary>
    /// <remarks>
    /// Where neighbours have parted right at a place where four panels meet, the sky there counts as far as sides face each
    /// other.
    /// </remarks>
    public required SolidAngle ExpectedGapArea { get; init; }

    /// <summary>The two neighbours that parted most often, the first such pair in reading order; null when none did.</summary>
    public required PartingPair? WeakestPair { get; init; }
}
