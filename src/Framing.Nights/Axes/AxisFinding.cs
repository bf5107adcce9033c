using Framing.Sky;

namespace Framing.Nights;

/// <summary>Where a mount's axis points, against the pole that it should point at.</summary>
/// <remarks>
/// The pole is the refracted one, as the air of the site lifts it: about it the sky that a camera sees turns most nearly.
/// </remarks>
public sealed record AxisFinding
{
    /// <summary>Altitude of the axis, as seen.</summary>
    public required Angle Altitude { get; init; }

    /// <summary>Azimuth of the axis, from north (0) through east (90°), 0 to 360°.</summary>
    public required Angle Azimuth { get; init; }

    /// <summary>Axis minus pole in altitude: positive when the axis points too high.</summary>
    public required Angle TooHigh { get; init; }

    /// <summary>One standard deviation of <see cref="TooHigh"/>.</summary>
    public required Angle TooHighSigma { get; init; }

    /// <summary>
    /// Axis minus pole in azimuth, about the vertical as a wedge swings, -180° to +180°: positive when the axis points too
    /// far clockwise as seen from above (east of a north pole, west of a south pole).
    /// </summary>
    public required Angle TooFarClockwise { get; init; }

    /// <summary>One standard deviation of <see cref="TooFarClockwise"/>.</summary>
    public required Angle TooFarClockwiseSigma { get; init; }

    /// <summary>The angle between axis and pole on the sky: <c>polar_error_arcmin</c> of a plan.</summary>
    public required Angle Error { get; init; }

    /// <summary>One standard deviation of <see cref="Error"/>.</summary>
    public required Angle ErrorSigma { get; init; }

    /// <summary>
    /// The largest angle by which the frames' cameras disagree about the axis; 0 for two frames, which always agree. More than a few
    /// times the sigmas means that something else than the axis of right ascension turned, too.
    /// </summary>
    public required Angle Disagreement { get; init; }

    /// <summary>The largest angle that the mount was turned by between two of the frames.</summary>
    public required Angle Turned { get; init; }
}
