using Framing.Planning;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>One checked frame, as the evening's log keeps it.</summary>
/// <param name="At">When the frame was taken, UTC.</param>
/// <param name="Panel">The panel it was held against.</param>
/// <param name="Step">What was to be done first; null when the frame was within the tolerance.</param>
/// <param name="Typed">What was taken to be typed last, as the hand control counts.</param>
/// <param name="Retype">What was offered to be typed.</param>
/// <param name="MovedByKeys">True when keys had moved the telescope since.</param>
/// <param name="Offset">What the mount points off from what is typed.</param>
/// <param name="RightAscension">How the axis of right ascension was known to obey when the moves were asked for.</param>
/// <param name="Declination">The same of the declination axis.</param>
internal sealed record EveningEntry(
    DateTime At,
    int Panel,
    CheckStep? Step,
    SkyDirection Typed,
    SkyDirection Retype,
    bool MovedByKeys,
    MountOffset Offset,
    AxisHandling RightAscension,
    AxisHandling Declination
);
