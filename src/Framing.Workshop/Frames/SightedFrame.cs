using Framing.Imaging;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>A frame as it was read for a check.</summary>
/// <param name="File">The file, as it was named.</param>
/// <param name="Facts">What the file is.</param>
/// <param name="Seen">Where it looks; null when that is not known.</param>
/// <param name="Reason">Why it is not known, and what to do; null when it is.</param>
/// <param name="HasTime">True when the file says when it was taken.</param>
/// <param name="FocalLengthMillimetres">The focal length that it shows with the pixels of the plan's rig; null when not known.</param>
/// <param name="Scale">The sky that one pixel spans; null when not known.</param>
/// <param name="Notes">What the user should know of the file.</param>
internal sealed record SightedFrame(
    string File,
    PictureFacts Facts,
    SeenFrame? Seen,
    string? Reason,
    bool HasTime,
    double? FocalLengthMillimetres,
    Angle? Scale,
    IReadOnlyList<string> Notes
);
