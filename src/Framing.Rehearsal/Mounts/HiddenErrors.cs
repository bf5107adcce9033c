using Framing.Sky;

namespace Framing.Rehearsal;

/// <summary>What is wrong with a rehearsed evening, and what whoever practises has to find out.</summary>
/// <remarks>It never changes in an evening: what is put right is kept in <see cref="MountState"/>.</remarks>
public sealed record HiddenErrors
{
    /// <summary>The mount's axis minus the pole as the air lifts it, in altitude: positive when it points too high.</summary>
    public Angle AxisTooHigh { get; init; }

    /// <summary>The same in azimuth, about the vertical, positive clockwise as seen from above.</summary>
    public Angle AxisTooFarClockwise { get; init; }

    /// <summary>Where the mount points minus where it believes to point, in right ascension: an angle on its axis, east positive.</summary>
    public Angle PointsTooFarEast { get; init; }

    /// <summary>The same in declination, north positive.</summary>
    public Angle PointsTooFarNorth { get; init; }

    /// <summary>What each new pointing adds at random on each axis, 1 sigma.</summary>
    public Angle Scatter { get; init; }

    /// <summary>How the displayed picture's up is turned against the mount's own north, at the evening's start.</summary>
    public PositionAngle CameraAngle { get; init; }

    /// <summary>How well a hand turns the camera, 1 sigma.</summary>
    public Angle TurnSigma { get; init; }

    /// <summary>True rate of the keys east and west over what their label promises.</summary>
    public double RightAscensionRate { get; init; } = 1.0;

    /// <summary>True rate of the keys north and south over what their label promises.</summary>
    public double DeclinationRate { get; init; } = 1.0;

    /// <summary>Play of the gear in right ascension, an angle on the axis.</summary>
    public Angle RightAscensionBacklash { get; init; }

    /// <summary>Play of the gear in declination.</summary>
    public Angle DeclinationBacklash { get; init; }

    /// <summary>True when a held key adds to the drive's motion, false when it takes its place.</summary>
    public bool KeyAddsToTracking { get; init; } = true;

    /// <summary>True focal length over the one that the plan gives.</summary>
    public double FocalLengthFactor { get; init; } = 1.0;

    /// <summary>What chance hangs on.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Draws errors.</summary>
    /// <param name="seed">What chance hangs on.</param>
    /// <param name="expected">How large they usually are, and where the camera angle lies around.</param>
    /// <returns>The errors.</returns>
    public static HiddenErrors Draw(ulong seed, UsualErrors expected)
    {
        ArgumentNullException.ThrowIfNull(expected);
        var random = new RandomStream(seed, 0xE440);
        var direction = random.Between(0.0, 2.0 * Math.PI);
        var polar = expected.PolarError * (0.6 + (0.8 * random.Share()));
        return new()
        {
            AxisTooHigh = polar * Math.Sin(direction),
            AxisTooFarClockwise =
                polar * (Math.Cos(direction) / Math.Max(0.2, Math.Cos(expected.Latitude.Radians))),
            PointsTooFarEast = expected.Pointing * Clipped(ref random),
            PointsTooFarNorth = expected.Pointing * Clipped(ref random),
            Scatter = expected.Scatter,
            CameraAngle = expected.CameraAngle.TurnedBy(
                Angle.FromDegrees(random.Between(4.0, 25.0) * (random.Share() < 0.5 ? -1.0 : 1.0))
            ),
            TurnSigma = expected.TurnSigma,
            RightAscensionRate = random.Between(0.88, 1.12),
            DeclinationRate = random.Between(0.88, 1.12),
            RightAscensionBacklash = expected.RightAscensionBacklash * random.Between(0.6, 1.4),
            DeclinationBacklash = expected.DeclinationBacklash * random.Between(0.6, 1.4),
            KeyAddsToTracking = expected.KeyAddsToTracking,
            FocalLengthFactor = random.Between(0.985, 1.015),
            Seed = seed,
        };
    }

    /// <summary>A normal number that is neither so small that there is nothing to find nor out of all proportion.</summary>
    private static double Clipped(ref RandomStream random)
    {
        var number = random.Normal();
        return Math.Sign(number) * Math.Clamp(Math.Abs(number), 0.4, 2.5);
    }
}
