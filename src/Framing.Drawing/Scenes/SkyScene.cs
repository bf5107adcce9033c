using Framing.Sky;

namespace Framing.Drawing;

/// <summary>Everything that a picture of the sky shows, as values on the sky. Nothing here knows of pixels or colours.</summary>
public sealed record SkyScene
{
    /// <summary>The part of the sky that is shown.</summary>
    public required ChartView View { get; init; }

    /// <summary>The title; may be empty.</summary>
    public string Title { get; init; } = string.Empty;

    /// <summary>One line that sums up the plan; may be empty.</summary>
    public string Summary { get; init; } = string.Empty;

    /// <summary>False for a chart alone, whose marks are explained elsewhere.</summary>
    public bool HasLegend { get; init; } = true;

    /// <summary>Stars in any order; those outside the chart do no harm. The faintest are left out where there are too many.</summary>
    public IReadOnlyList<ChartStar> Stars { get; init; } = [];

    /// <summary>Objects besides the target.</summary>
    public IReadOnlyList<ChartObject> Objects { get; init; } = [];

    /// <summary>What is to be photographed: its outlines are drawn in an ink of their own and named before all others.</summary>
    public IReadOnlyList<ChartObject> Targets { get; init; } = [];

    /// <summary>The panels.</summary>
    public IReadOnlyList<ChartPanel> Panels { get; init; } = [];

    /// <summary>Frames that were taken, drawn over the panels.</summary>
    public IReadOnlyList<ChartFrame> Frames { get; init; } = [];

    /// <summary>
    /// What of the target lies outside every panel: closed rings, hatched where an odd number of them is crossed on the
    /// way out, so that a hole is a ring inside another.
    /// </summary>
    public IReadOnlyList<IReadOnlyList<SkyDirection>> FallsShort { get; init; } = [];

    /// <summary>Gaps between panels and holes among them: closed rings, each hatched by itself.</summary>
    public IReadOnlyList<IReadOnlyList<SkyDirection>> Gaps { get; init; } = [];

    /// <summary>Where neighbouring panels share less than planned: closed rings, each hatched by itself.</summary>
    public IReadOnlyList<IReadOnlyList<SkyDirection>> ThinOverlaps { get; init; } = [];

    /// <summary>A picture laid on the sky, or null for the plain chart.</summary>
    public IBackdrop? Backdrop { get; init; }
}
