using Framing.Sky;

namespace Framing.Rehearsal;

/// <summary>How large the errors of an evening usually are: what a plan expects of its mount.</summary>
public sealed record UsualErrors
{
    /// <summary>Latitude of the site.</summary>
    public required Angle Latitude { get; init; }

    /// <summary>Distance of the mount's axis from the pole.</summary>
    public required Angle PolarError { get; init; }

    /// <summary>Standard deviation of the first pointing on each axis.</summary>
    public required Angle Pointing { get; init; }

    /// <summary>What each new pointing adds at random on each axis, 1 sigma.</summary>
    public required Angle Scatter { get; init; }

    /// <summary>Where the camera is meant to stand.</summary>
    public required PositionAngle CameraAngle { get; init; }

    /// <summary>How well a hand turns the camera, 1 sigma.</summary>
    public required Angle TurnSigma { get; init; }

    /// <summary>Play of the gear in right ascension.</summary>
    public required Angle RightAscensionBacklash { get; init; }

    /// <summary>Play of the gear in declination.</summary>
    public required Angle DeclinationBacklash { get; init; }

    /// <summary>True when a held key adds to the drive's motion.</summary>
    public required bool KeyAddsToTracking { get; init; }
}
