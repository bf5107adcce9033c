using Framing.Drawing;

namespace Framing.Workshop;

/// <summary>Which folder the user wants added up against which plan.</summary>
public sealed record TallyOrder
{
    /// <summary>The plan file.</summary>
    public required string PlanPath { get; init; }

    /// <summary>The folder of the frames, as named; the folders in it are looked through, too.</summary>
    public required string Folder { get; init; }

    /// <summary>The folder that relative paths start from.</summary>
    public required string WorkingFolder { get; init; }

    /// <summary>Where a picture of the exposure's depth is written, PNG or SVG by its ending; null for none.</summary>
    public string? PicturePath { get; init; }

    /// <summary>Size of the picture.</summary>
    public PictureSize Size { get; init; }

    /// <summary>Colours of the picture.</summary>
    public PicturePalette Palette { get; init; }
}
