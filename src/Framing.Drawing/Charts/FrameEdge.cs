namespace Framing.Drawing;

/// <summary>An edge of the chart.</summary>
internal enum FrameEdge
{
    Left,
    Right,
    Bottom,
    Top,
}
