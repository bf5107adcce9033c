using Framing.Drawing;

namespace Framing.Workshop;

/// <summary>What the user wants planned, and what of the plan file the call overrules.</summary>
public sealed record PlanOrder
{
    /// <summary>The plan file; null for the example that the program carries.</summary>
    public string? PlanPath { get; init; }

    /// <summary>The folder for the results; null for one named for title and date in <see cref="WorkingFolder"/>.</summary>
    public string? OutputFolder { get; init; }

    /// <summary>Where a folder for the results is made when none is given.</summary>
    public required string WorkingFolder { get; init; }

    /// <summary>The evening's date; null for the plan's own, or today.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>A picture with a solution to draw under the chart; null for none.</summary>
    public string? BackdropPath { get; init; }

    /// <summary>A frame with a solution whose centre and angle are taken; null to find the best for the target.</summary>
    public string? LikePath { get; init; }

    /// <summary>What of the picture may be made up.</summary>
    public MadeUpParts MadeUp { get; init; }

    /// <summary>Size of the picture.</summary>
    public PictureSize Size { get; init; }

    /// <summary>Colours of the picture.</summary>
    public PicturePalette Palette { get; init; }
}
