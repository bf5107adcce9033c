using Framing.Sky;

namespace Framing.Drawing;

/// <summary>A frame that was taken, to be seen beside the panels that were planned.</summary>
/// <param name="Name">What it is called in the legend.</param>
/// <param name="Corners">Outer corners: top-left, top-right, bottom-right, bottom-left as displayed.</param>
public sealed record ChartFrame(string Name, IReadOnlyList<SkyDirection> Corners);
