using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>One panel of a mosaic.</summary>
/// <param name="Number">1 or more, in reading order as displayed: row by row from the top, each row from the left.</param>
/// <param name="Column">1 or more, from the left of the displayed picture.</param>
/// <param name="Row">1 or more, from the top of the displayed picture.</param>
/// <param name="Pose">Where the camera looks for this panel, and its position angle there.</param>
/// <param name="Corners">The outer corners as displayed: top-left, top-right, bottom-right, bottom-left.</param>
public sealed record Panel(
    int Number,
    int Column,
    int Row,
    CameraPose Pose,
    IReadOnlyList<SkyDirection> Corners
);
