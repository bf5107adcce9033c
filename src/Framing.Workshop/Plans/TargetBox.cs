using Framing.Sky;

namespace Framing.Workshop;

/// <summary>A target given as a box on the sky.</summary>
/// <param name="Centre">Its middle, ICRS.</param>
/// <param name="Long">The long side.</param>
/// <param name="Short">The short side.</param>
/// <param name="AlongLong">Position angle of the long side.</param>
public sealed record TargetBox(
    SkyDirection Centre,
    Angle Long,
    Angle Short,
    PositionAngle AlongLong
);
