using Framing.Sky;

namespace Framing.Drawing;

/// <summary>A panel of the mosaic as the chart draws it.</summary>
/// <param name="Number">Its number in the plan, 1 or more; 0 for a frame that belongs to no plan and bears no number.</param>
/// <param name="Centre">Where the middle of the sensor looks.</param>
/// <param name="Corners">Its outer corners in order; the sides are great circles.</param>
public sealed record ChartPanel(
    int Number,
    SkyDirection Centre,
    IReadOnlyList<SkyDirection> Corners
);
