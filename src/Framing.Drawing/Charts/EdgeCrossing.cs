namespace Framing.Drawing;

/// <summary>Where a line leaves the chart.</summary>
internal sealed record EdgeCrossing(FrameEdge Edge, PicturePoint Place);
