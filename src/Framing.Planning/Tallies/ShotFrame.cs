using Framing.Sky;

namespace Framing.Planning;

/// <summary>A frame of a folder, as a tally needs it.</summary>
public sealed record ShotFrame
{
    /// <summary>The file, as it is named to the user.</summary>
    public required string File { get; init; }

    /// <summary>What the frame is known by: its samples and its date, whatever the file is called and its header says.</summary>
    public required string Key { get; init; }

    /// <summary>What it was taken for.</summary>
    public required ShotKind Kind { get; init; }

    /// <summary>Why it cannot be used, in a clause without a full stop; null when nothing speaks against it by itself.</summary>
    public string? Fault { get; init; }

    /// <summary>The start of its exposure, UTC; null when not known.</summary>
    public DateTime? At { get; init; }

    /// <summary>Its exposure in seconds, 0 or more; null when not known.</summary>
    public double? ExposureSeconds { get; init; }

    /// <summary>The filter as its header names it; null when it names none.</summary>
    public string? Filter { get; init; }

    /// <summary>Where it looks, J2000; null when not known.</summary>
    public CameraPose? Pose { get; init; }

    /// <summary>Its field, where it is known where it looks.</summary>
    public FieldShape Field { get; init; }

    /// <summary>True when the displayed picture is mirrored.</summary>
    public bool Mirrored { get; init; }

    /// <summary>How many stars it shows.</summary>
    public int Stars { get; init; }

    /// <summary>Its background in the file's numbers.</summary>
    public double Background { get; init; }

    /// <summary>How long its stars are against their width, usually; null when they are too few to tell.</summary>
    public double? Elongation { get; init; }

    /// <summary>Outer corners, J2000: top-left, top-right, bottom-right, bottom-left as displayed.</summary>
    public IReadOnlyList<SkyDirection> Corners =>
        Pose is { } pose ? Field.Corners(pose, Mirrored) : [];
}
