using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Planning;

/// <summary>A framing as worked out: centre, camera angle, panels, and how well they cover the target.</summary>
public sealed record FramedPlan
{
    /// <summary>What was asked.</summary>
    public required FramingRequest Request { get; init; }

    /// <summary>The middle of the mosaic and the camera angle there, J2000.</summary>
    public required CameraPose Pose { get; init; }

    /// <summary>
    /// How far the camera has to turn from where it stands now, -90° to +90°, since half a turn shows the same frame; plus
    /// turns the camera's body counter-clockwise as seen from behind it, looking along it at the sky. Null where the plan
    /// does not say how it stands.
    /// </summary>
    /// <remarks>
    /// Looking at the sky with north up, east is on the left: a position angle grows counter-clockwise. An odd number of
    /// mirrors ahead of the camera reverses it.
    /// </remarks>
    public Angle? CameraTurn =>
        Request.PresentCameraAngle is { } now
            ? now.FrameTurnTo(Pose.PositionAngle) * (Request.Rig.Mirrored ? -1.0 : 1.0)
            : null;

    /// <summary>Why the camera stands so, in the strategy's words.</summary>
    public required string RotationReason { get; init; }

    /// <summary>
    /// The margin between the outline and the tighter pair of the mosaic's edges, as a tangent in the plane of the
    /// mosaic's middle; negative by how much the outline falls outside.
    /// </summary>
    public required double TangentMargin { get; init; }

    /// <summary>The margin that was wanted, dithering included, as a tangent.</summary>
    public required double WantedTangentMargin { get; init; }

    /// <summary>How much sky neighbours share as planned, on a flat chart.</summary>
    public required PanelOverlap Overlap { get; init; }

    /// <summary>Why they share as much, in the strategy's words.</summary>
    public required string OverlapReason { get; init; }

    /// <summary>Panels along the width of the picture; where they fill no rectangle the most of a row, or all columns.</summary>
    public required int Columns { get; init; }

    /// <summary>Panels along the height of the picture; where they fill no rectangle all rows, or the most of a column.</summary>
    public required int Rows { get; init; }

    /// <summary>The number of panels where they fill no rectangle; null where they do.</summary>
    public long? PlacedPanels { get; init; }

    /// <summary>True when the panels fill a rectangle of columns and rows.</summary>
    public bool IsRectangle => PlacedPanels is null;

    /// <summary>All panels; when the framing cannot be, as many as it would need.</summary>
    public long PanelCount => PlacedPanels ?? (long)Columns * Rows;

    /// <summary>The panels in their order; empty when the framing cannot be (<see cref="Impossible"/>).</summary>
    public required IReadOnlyList<PlannedPanel> Panels { get; init; }

    /// <summary>What the panels cover; null when the framing cannot be (<see cref="Impossible"/>).</summary>
    public required MosaicCoverage? Coverage { get; init; }

    /// <summary>
    /// How likely the mosaic is to close and to cover its target when each panel is shot a little off its plan; null when
    /// the framing cannot be.
    /// </summary>
    public ClosingOdds? Odds { get; init; }

    /// <summary>How far the camera would turn at each panel, and whether that is worth it; null for a single panel.</summary>
    public PanelTurns? Turns { get; init; }

    /// <summary>
    /// Where neighbours share less than planned, by more than is worth a word: wedges and strips that one of them covers and
    /// both should, each by its corners in order.
    /// </summary>
    public IReadOnlyList<IReadOnlyList<SkyDirection>> ThinOverlaps { get; init; } = [];

    /// <summary>The order in which the panels are best shot; null when the framing cannot be.</summary>
    public ShootingRoute? Route { get; init; }

    /// <summary>The panels in the order of shooting.</summary>
    public IEnumerable<PlannedPanel> PanelsToShoot =>
        Route is null ? Panels : Route.Order.Select(index => Panels[index]);

    /// <summary>What the user should know: what, by how much, and what to do.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }

    /// <summary>Why the thing asked for cannot be; null when it can.</summary>
    public string? Impossible { get; init; }
}
