namespace Framing.Mosaics;

/// <summary>How much sky neighbouring panels share, as tangents in the plane of the mosaic.</summary>
/// <param name="AlongWidth">Shared by panels side by side, measured along the width of the picture.</param>
/// <param name="AlongHeight">Shared by panels one above the other, measured along the height of the picture.</param>
/// <remarks>
/// The step from panel to panel is the panel's own tangent width (or height) less this. In minutes of arc it is the
/// tangent times 60·180/π: the angle at the middle of a tangent plane.
/// </remarks>
public readonly record struct PanelOverlap(double AlongWidth, double AlongHeight);
