using Framing.Drawing;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>What frames the user wants checked against which plan.</summary>
public sealed record CheckOrder
{
    /// <summary>The plan file.</summary>
    public required string PlanPath { get; init; }

    /// <summary>The frames, as the user named them.</summary>
    public IReadOnlyList<string> Frames { get; init; } = [];

    /// <summary>The folder that relative paths of frames start from.</summary>
    public required string WorkingFolder { get; init; }

    /// <summary>The number of the panel; null for the nearest.</summary>
    public int? Panel { get; init; }

    /// <summary>The frame before the last move, from which the move is learned; null for none.</summary>
    public string? After { get; init; }

    /// <summary>A folder whose newest finished frame is checked; null for none.</summary>
    public string? NewestOf { get; init; }

    /// <summary>How long a new frame is waited for.</summary>
    public TimeSpan Wait { get; init; } = TimeSpan.FromMinutes(30.0);

    /// <summary>What was typed into the hand control last, in its own frame; null for what the plan or the last check said.</summary>
    public SkyDirection? Typed { get; init; }

    /// <summary>The reading of the camera's dial at the frame, to learn its zero; null for none.</summary>
    public Angle? DialReading { get; init; }

    /// <summary>True when the focal length that the frame shows is to be written into the rig.</summary>
    public bool CorrectRig { get; init; }

    /// <summary>Where a picture of plan and frame is written, PNG or SVG by its ending; null for none.</summary>
    public string? PicturePath { get; init; }

    /// <summary>Size of the picture.</summary>
    public PictureSize Size { get; init; }

    /// <summary>Colours of the picture.</summary>
    public PicturePalette Palette { get; init; }
}
