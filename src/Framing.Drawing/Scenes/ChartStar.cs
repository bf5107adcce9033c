using Framing.Sky;

namespace Framing.Drawing;

/// <summary>A star to draw.</summary>
/// <param name="Direction">Where it stands, at the date of the chart.</param>
/// <param name="Magnitude">Johnson V.</param>
/// <param name="ColourIndex">Johnson B-V, for a faint tint; null where it is not known.</param>
/// <param name="Name">The name to print beside it, or null for none.</param>
/// <param name="MadeUp">True for a star that no catalogue holds: drawn as an open ring, and the legend says so.</param>
public readonly record struct ChartStar(
    SkyDirection Direction,
    double Magnitude,
    double? ColourIndex = null,
    string? Name = null,
    bool MadeUp = false
);
