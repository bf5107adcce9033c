using System.Globalization;

namespace Framing.Sky;

/// <summary>
/// A plane angle: a difference between two directions, a size on the sky, or one spherical coordinate.
/// </summary>
/// <remarks>
/// <para>Holds radians, any finite value, never wrapped on its own: 370° stays 370° until <see cref="Wrapped"/> is asked.</para>
/// <para>Arithmetic whose result is not finite throws <see cref="ArithmeticException"/>; no angle ever holds NaN.</para>
/// <para><c>default(Angle)</c> is <see cref="Zero"/>.</para>
/// <para>
/// An angle that is counted from north through east is a <see cref="PositionAngle"/>; a place on the sky is a
/// <see cref="SkyDirection"/>. Neither converts to a bare number without naming its unit.
/// </para>
/// </remarks>
public readonly struct Angle : IEquatable<Angle>, IComparable<Angle>
{
    private const double RadiansPerDegree = Math.PI / 180.0;

    /// <summary>Two steps of double precision below 2π; from here on degrees and hours may round to the full turn.</summary>
    private static readonly double LargestBelowFullTurn = Math.BitDecrement(
        Math.BitDecrement(Math.Tau)
    );

    private Angle(double radians) => Radians = radians;

    /// <summary>No angle at all.</summary>
    public static Angle Zero => default;

    /// <summary>The angle in radians.</summary>
    public double Radians { get; }

    /// <summary>The angle in degrees.</summary>
    public double Degrees => Radians / RadiansPerDegree;

    /// <summary>The angle in hours of right ascension or hour angle (15° each).</summary>
    public double Hours => Radians / (15.0 * RadiansPerDegree);

    /// <summary>The angle in minutes of arc.</summary>
    public double Arcminutes => Radians * (60.0 / RadiansPerDegree);

    /// <summary>The angle in seconds of arc.</summary>
    public double Arcseconds => Radians * (3600.0 / RadiansPerDegree);

    /// <summary>The same direction of turning, as an angle from 0 (included) to 360° (left out).</summary>
    public Angle Wrapped
    {
        get
        {
            var turned = Math.IEEERemainder(Radians, Math.Tau);
            if (turned < 0.0)
            {
                turned += Math.Tau;
            }

            // A tiny negative value plus a full turn rounds to the full turn itself, or to a value that is 360 in degrees
            // (24 in hours): both are 0. The last addition turns -0 into 0.
            return turned >= LargestBelowFullTurn ? Zero : new Angle(turned + 0.0);
        }
    }

    /// <summary>The same direction of turning, as an angle from -180° (left out) to +180° (included).</summary>
    public Angle WrappedSigned
    {
        get
        {
            var turned = Math.IEEERemainder(Radians, Math.Tau);
            return new Angle(turned <= -Math.PI ? Math.PI : turned + 0.0);
        }
    }

    /// <summary>The size of the angle without its sign.</summary>
    public Angle Magnitude => new(Math.Abs(Radians));

    /// <summary>The sum of two angles.</summary>
    public static Angle operator +(Angle left, Angle right) =>
        Computed(left.Radians + right.Radians);

    /// <summary>The difference of two angles.</summary>
    public static Angle operator -(Angle left, Angle right) =>
        Computed(left.Radians - right.Radians);

    /// <summary>The angle turned the other way.</summary>
    public static Angle operator -(Angle angle) => new(-angle.Radians);

    /// <summary>A multiple of an angle.</summary>
    public static Angle operator *(Angle angle, double factor) => Computed(angle.Radians * factor);

    /// <summary>A multiple of an angle.</summary>
    public static Angle operator *(double factor, Angle angle) => angle * factor;

    /// <summary>A part of an angle.</summary>
    public static Angle operator /(Angle angle, double divisor) =>
        Computed(angle.Radians / divisor);

    /// <summary>How often one angle holds another: a bare number, infinite or NaN where the unit is no angle at all.</summary>
    public static double operator /(Angle angle, Angle unit) => angle.Radians / unit.Radians;

    /// <summary>True when the left angle is the smaller one, signs counted.</summary>
    public static bool operator <(Angle left, Angle right) => left.Radians < right.Radians;

    /// <summary>True when the left angle is the larger one, signs counted.</summary>
    public static bool operator >(Angle left, Angle right) => left.Radians > right.Radians;

    /// <summary>True when the left angle is not the larger one, signs counted.</summary>
    public static bool operator <=(Angle left, Angle right) => left.Radians <= right.Radians;

    /// <summary>True when the left angle is not the smaller one, signs counted.</summary>
    public static bool operator >=(Angle left, Angle right) => left.Radians >= right.Radians;

    /// <summary>True when both angles hold the same number.</summary>
    public static bool operator ==(Angle left, Angle right) => left.Equals(right);

    /// <summary>True when the angles hold different numbers.</summary>
    public static bool operator !=(Angle left, Angle right) => !left.Equals(right);

    /// <summary>Makes an angle from radians.</summary>
    /// <param name="radians">Radians, finite.</param>
    /// <returns>The angle, not wrapped.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Angle FromRadians(double radians) => new(Finite(radians, nameof(radians)));

    /// <summary>Makes an angle from degrees.</summary>
    /// <param name="degrees">Degrees, finite.</param>
    /// <returns>The angle, not wrapped.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Angle FromDegrees(double degrees) =>
        new(Finite(degrees, nameof(degrees)) * RadiansPerDegree);

    /// <summary>Makes an angle from hours (15° each).</summary>
    /// <param name="hours">Hours, finite.</param>
    /// <returns>The angle, not wrapped.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Angle FromHours(double hours) =>
        new(Finite(hours, nameof(hours)) * (15.0 * RadiansPerDegree));

    /// <summary>Makes an angle from minutes of arc.</summary>
    /// <param name="arcminutes">Minutes of arc, finite.</param>
    /// <returns>The angle, not wrapped.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Angle FromArcminutes(double arcminutes) =>
        new(Finite(arcminutes, nameof(arcminutes)) * (RadiansPerDegree / 60.0));

    /// <summary>Makes an angle from seconds of arc.</summary>
    /// <param name="arcseconds">Seconds of arc, finite.</param>
    /// <returns>The angle, not wrapped.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Angle FromArcseconds(double arcseconds) =>
        new(Finite(arcseconds, nameof(arcseconds)) * (RadiansPerDegree / 3600.0));

    /// <summary>The smaller of two angles, signs counted.</summary>
    public static Angle Min(Angle left, Angle right) =>
        left.Radians <= right.Radians ? left : right;

    /// <summary>The larger of two angles, signs counted.</summary>
    public static Angle Max(Angle left, Angle right) =>
        left.Radians >= right.Radians ? left : right;

    /// <inheritdoc/>
    public bool Equals(Angle other) => Radians.Equals(other.Radians);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Angle other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => Radians.GetHashCode();

    /// <inheritdoc/>
    public int CompareTo(Angle other) => Radians.CompareTo(other.Radians);

    /// <summary>The angle in degrees with six decimals, in the invariant culture, for logs and test messages.</summary>
    public override string ToString() =>
        (Math.Round(Degrees, 6) + 0.0).ToString("0.######", CultureInfo.InvariantCulture) + "°";

    private static Angle Computed(double radians) =>
        double.IsFinite(radians)
            ? new(radians)
            : throw new ArithmeticException(
                "The result is no angle: it is not a finite number (a division by zero, or a factor that is not finite)."
            );

    private static double Finite(double value, string name) =>
        double.IsFinite(value)
            ? value
            : throw new ArgumentOutOfRangeException(
                name,
                value,
                "An angle must be a finite number."
            );
}
