using Framing.Sky;

namespace Framing.Drawing;

/// <summary>A panel of the mosaic as the chart draws it.</summary>
/// <param name="Number">Its number in the plan, 1 or more.</param>
/// <param name="Centre">Where the middle of the sensor looks.</param>
/// <param name="Corners">Its outer corners in order; the sides are great circles.</param>
public sealed record ChartPanel(
    int Number,
    SkyDirection Centre,
    IReadOnlyList<SkyDirection> Corners
);
