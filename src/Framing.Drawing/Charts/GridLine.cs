namespace Framing.Drawing;

/// <summary>A line of the grid: where it runs, what its value is, and where it leaves the chart.</summary>
internal sealed record GridLine(
    bool IsMeridian,
    string Label,
    Lines Lines,
    IReadOnlyList<EdgeCrossing> Crossings
);
