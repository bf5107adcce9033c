namespace Framing.Sky;

/// <summary>Where a camera looks and how it is turned.</summary>
/// <param name="Centre">The direction that the middle of the sensor looks at.</param>
/// <param name="PositionAngle">
/// Position angle of the displayed picture's up direction, at the centre, north through east.
/// </param>
public readonly record struct CameraPose(SkyDirection Centre, PositionAngle PositionAngle);
