using Framing.Imaging;
using Framing.Sky;
using Framing.Solving;

namespace Framing.Workshop;

/// <summary>What came of solving a frame.</summary>
public sealed record SolveResult
{
    /// <summary>What the file is.</summary>
    public required PictureFacts Facts { get; init; }

    /// <summary>The stars that were found in it.</summary>
    public required FoundStars Found { get; init; }

    /// <summary>Where it points; null if it was not solved.</summary>
    public required SolvedFrame? Solution { get; init; }

    /// <summary>Why it was not solved, a clause to follow the file's name; null if it was.</summary>
    public required string? WhyNot { get; init; }

    /// <summary>Where it lies on the sky, as its file's axes run and as displayed; null if it was not solved.</summary>
    public required SkyFacts? Sky { get; init; }

    /// <summary>What a person should know, one sentence each, the file's name not among it.</summary>
    public required IReadOnlyList<string> Messages { get; init; }

    /// <summary>The world coordinates, for pixels as the file's axes run; null if it was not solved.</summary>
    public WorldCoordinates? Coordinates => Solution?.Fit.Coordinates;

    /// <summary>The focal length in mm that goes with the pixel size the file states; null where it states none.</summary>
    public double? FocalLengthMillimetres =>
        Solution is { } solution && Facts.Rig.PixelMicrometres is { } pixel
            ? 1e-3 * pixel / Math.Tan(solution.Scale.Radians)
            : null;
}
