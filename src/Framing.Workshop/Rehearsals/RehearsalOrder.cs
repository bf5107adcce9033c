using Framing.Rehearsal;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>What frames are to be made, and what was done at the mount before.</summary>
public sealed record RehearsalOrder
{
    /// <summary>The plan file; null for the example that the program carries.</summary>
    public string? PlanPath { get; init; }

    /// <summary>The panel whose coordinates are typed, from 1; null for each in turn, or with an evening for where the mount is.</summary>
    public int? Panel { get; init; }

    /// <summary>The file that holds the evening's hidden errors and how the mount stands; null for frames without an evening.</summary>
    public string? ErrorPath { get; init; }

    /// <summary>The folder for the frames; null for the evening's folder, or one named for the plan.</summary>
    public string? OutputFolder { get; init; }

    /// <summary>Where a folder for the frames is made when none is given.</summary>
    public required string WorkingFolder { get; init; }

    /// <summary>What was typed into the hand control, as it expects it (of date or J2000 by the plan); null for nothing.</summary>
    public SkyDirection? Typed { get; init; }

    /// <summary>Keys held, one after the other.</summary>
    public IReadOnlyList<HeldKey> Presses { get; init; } = [];

    /// <summary>How far the camera body was turned, counter-clockwise as seen from behind the camera.</summary>
    public Angle Turn { get; init; }

    /// <summary>How far the axis was raised; negative for lowered.</summary>
    public Angle Raise { get; init; }

    /// <summary>How far the wedge was swung about the vertical towards east; negative towards west.</summary>
    public Angle SwingEast { get; init; }

    /// <summary>What chance hangs on.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>The evening's date; null for the plan's own, or today.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>Exposure in seconds.</summary>
    public double ExposureSeconds { get; init; } = 10.0;

    /// <summary>The kind of frame.</summary>
    public FrameKind Kind { get; init; }

    /// <summary>Pixels joined along each axis; null for the plan's.</summary>
    public int? Binning { get; init; }

    /// <summary>The colour filter over the pixels, such as RGGB; null for none.</summary>
    public string? ColourPattern { get; init; }

    /// <summary>True to store the top row first.</summary>
    public bool RowsTopDown { get; init; }

    /// <summary>Clouds, 0 to 1.</summary>
    public double Clouds { get; init; }

    /// <summary>Satellites that cross each frame.</summary>
    public int Satellites { get; init; }

    /// <summary>Radius of the discs of stars out of focus, unbinned pixels.</summary>
    public double DefocusPx { get; init; }

    /// <summary>True when something was done at the mount or camera.</summary>
    internal bool Acts =>
        Typed is not null
        || Presses.Count > 0
        || Turn != Angle.Zero
        || Raise != Angle.Zero
        || SwingEast != Angle.Zero;
}
