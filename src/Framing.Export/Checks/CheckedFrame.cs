using Framing.Planning;
using Framing.Sky;

namespace Framing.Export;

/// <summary>A test frame with its check, or the reason why there is none.</summary>
/// <param name="File">The frame's file, as it was named.</param>
/// <param name="Check">The check; null when the frame could not be solved.</param>
/// <param name="Reason">Why the frame could not be solved; null when it could.</param>
/// <param name="FocalLengthMillimetres">The focal length that the frame shows; null when it is not known.</param>
/// <param name="Scale">The sky that one pixel of the frame spans; null when it is not known.</param>
/// <param name="Notes">What the reading of the frame said, beside the check's own warnings.</param>
public sealed record CheckedFrame(
    string File,
    FrameCheck? Check,
    string? Reason,
    double? FocalLengthMillimetres,
    Angle? Scale,
    IReadOnlyList<string> Notes
);
