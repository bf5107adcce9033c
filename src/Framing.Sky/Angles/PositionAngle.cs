using System.Globalization;

namespace Framing.Sky;

/// <summary>
/// A direction of turning at a place on the sky, counted from north through east, 0 to 360°.
/// </summary>
/// <remarks>
/// <para>
/// The camera's position angle is that of the displayed picture's up direction. It is not a reading of a dial on the
/// rings: that depends on where the dial's zero stands.
/// </para>
/// <para><c>default(PositionAngle)</c> is north, 0°.</para>
/// <para>"North" is the pole of the frame in use: ICRS unless a name says of date.</para>
/// </remarks>
public readonly struct PositionAngle : IEquatable<PositionAngle>
{
    private readonly Angle fromNorth;

    private PositionAngle(Angle angle) => fromNorth = angle.Wrapped;

    /// <summary>Towards north: 0°.</summary>
    public static PositionAngle North => default;

    /// <summary>Towards east: 90°.</summary>
    public static PositionAngle East => FromDegrees(90.0);

    /// <summary>Degrees from north through east, from 0 (included) to 360 (left out).</summary>
    public double Degrees => fromNorth.Degrees;

    /// <summary>Radians from north through east, from 0 (included) to 2π (left out).</summary>
    public double Radians => fromNorth.Radians;

    /// <summary>The opposite direction. A rectangle turned by 180° covers the same sky.</summary>
    public PositionAngle Opposite => new(fromNorth + Angle.FromRadians(Math.PI));

    /// <summary>True when both are the same direction, to the last bit.</summary>
    public static bool operator ==(PositionAngle left, PositionAngle right) => left.Equals(right);

    /// <summary>True when the directions differ.</summary>
    public static bool operator !=(PositionAngle left, PositionAngle right) => !left.Equals(right);

    /// <summary>Makes a position angle from degrees, north through east; any finite value is wrapped to 0–360.</summary>
    /// <param name="degrees">Degrees, finite; positive turns from north towards east.</param>
    /// <returns>The position angle.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static PositionAngle FromDegrees(double degrees) => new(Angle.FromDegrees(degrees));

    /// <summary>Makes a position angle from an angle that is counted from north through east; wrapped to 0–360°.</summary>
    /// <param name="angle">The angle, positive from north towards east.</param>
    /// <returns>The position angle.</returns>
    public static PositionAngle FromAngle(Angle angle) => new(angle);

    /// <summary>This direction turned further by an angle; positive turns from north towards east.</summary>
    /// <param name="turn">How far to turn.</param>
    /// <returns>The turned direction.</returns>
    public PositionAngle TurnedBy(Angle turn) => new(fromNorth + turn);

    /// <summary>The shortest turn that leads from this direction to another.</summary>
    /// <param name="target">The direction wanted.</param>
    /// <returns>The turn, more than -180° and at most +180°; positive from north towards east.</returns>
    public Angle TurnTo(PositionAngle target) => (target.fromNorth - fromNorth).WrappedSigned;

    /// <summary>
    /// The shortest turn that makes a frame at this angle cover what a frame at another angle covers: 180° counts as the
    /// same frame.
    /// </summary>
    /// <param name="target">The angle wanted.</param>
    /// <returns>The turn, more than -90° and at most +90°; positive from north towards east.</returns>
    public Angle FrameTurnTo(PositionAngle target)
    {
        var turn = Math.IEEERemainder(target.Radians - Radians, Math.PI);
        return Angle.FromRadians(turn <= -Math.PI / 2.0 ? Math.PI / 2.0 : turn);
    }

    /// <summary>Of this direction and its opposite, at which a frame covers the same sky, the one to name.</summary>
    /// <param name="present">Where the camera stands now, if known.</param>
    /// <returns>The one nearer to the present one; where that is not known, the one from 0 to less than 180°.</returns>
    public PositionAngle FrameNear(PositionAngle? present)
    {
        if (present is { } now)
        {
            return Math.Abs(now.TurnTo(this).Radians) <= Math.PI / 2.0 ? this : Opposite;
        }

        // Rounding must not turn north up into 179.99999999999 degrees.
        const double Hair = 1e-11;
        var half = Degrees >= 180.0 ? Opposite : this;
        return half.Degrees is < Hair or > 180.0 - Hair ? North : half;
    }

    /// <inheritdoc/>
    public bool Equals(PositionAngle other) => fromNorth.Equals(other.fromNorth);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is PositionAngle other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => fromNorth.GetHashCode();

    /// <summary>Degrees with six decimals, in the invariant culture, for logs and test messages.</summary>
    public override string ToString() =>
        (Math.Round(Degrees, 6) % 360.0).ToString("0.######", CultureInfo.InvariantCulture) + "°";
}
