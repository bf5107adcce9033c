using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>The answer to what a mosaic covers.</summary>
public sealed record CoverageResult
{
    private CoverageResult() { }

    /// <summary>What the mosaic covers; null when it is too wide to be measured in one tangent plane.</summary>
    public MosaicCoverage? Coverage { get; private init; }

    /// <summary>How far the farthest corner of a panel or of the target lies from the middle of the mosaic.</summary>
    public Angle Reach { get; private init; }

    internal static CoverageResult Measured(MosaicCoverage coverage, Angle reach) =>
        new() { Coverage = coverage, Reach = reach };

    internal static CoverageResult TooWide(Angle reach) => new() { Reach = reach };
}
