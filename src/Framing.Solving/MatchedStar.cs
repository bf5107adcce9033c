using Framing.Sky;

namespace Framing.Solving;

/// <summary>A star of a solved frame.</summary>
/// <param name="Detection">Which of the given detections it is.</param>
/// <param name="Direction">Its place in the catalogue, moved to the date of the frame, ICRS.</param>
/// <param name="VMagnitude">Its V, or what the table of the user has as brightness.</param>
/// <param name="ResidualPixels">How far the detection lies from where the solution puts the star.</param>
/// <param name="IsUsed">False where it lies too far off to be part of the fit.</param>
public readonly record struct MatchedStar(
    int Detection,
    SkyDirection Direction,
    double VMagnitude,
    double ResidualPixels,
    bool IsUsed
);
