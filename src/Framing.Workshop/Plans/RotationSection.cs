using Framing.Sky;

namespace Framing.Workshop;

/// <summary>How the camera is turned: [rotation].</summary>
/// <param name="Strategy">What decides the angle.</param>
/// <param name="CameraAngle">Where the camera is now: position angle of the displayed picture's up; null when not known.</param>
/// <param name="CameraAngleSigma">How well an angle can be set (one standard deviation).</param>
public sealed record RotationSection(
    StrategyChoice Strategy,
    PositionAngle? CameraAngle,
    Angle CameraAngleSigma
);
