namespace Framing.Sky;

/// <summary>A direction on the sky: a unit vector with a face of right ascension and declination.</summary>
/// <remarks>
/// <para>ICRS unless the name of a value says otherwise (of date).</para>
/// <para>
/// Separation, position angle, midpoint and offset work on the vectors, so that the poles and right ascension 0h are
/// places like any other.
/// </para>
/// <para>
/// <c>default(SkyDirection)</c> is no direction (its vector is zero); <see cref="IsDefault"/> tells. Every way of making
/// one gives a unit vector.
/// </para>
/// </remarks>
public readonly struct SkyDirection : IEquatable<SkyDirection>
{
    /// <summary>Below this length what is left of a sum of unit vectors is rounding, and points nowhere.</summary>
    private const double NoDirection = 1e-15;

    private SkyDirection(Vector3D unit) => Vector = unit;

    /// <summary>The north celestial pole.</summary>
    public static SkyDirection NorthPole => new(new Vector3D(0.0, 0.0, 1.0));

    /// <summary>The south celestial pole.</summary>
    public static SkyDirection SouthPole => new(new Vector3D(0.0, 0.0, -1.0));

    /// <summary>The unit vector.</summary>
    public Vector3D Vector { get; }

    /// <summary>True for <c>default(SkyDirection)</c>, which points nowhere.</summary>
    public bool IsDefault => Vector == default;

    /// <summary>Right ascension, from 0 (included) to 360° (left out); 0 exactly at a pole.</summary>
    public Angle RightAscension => Angle.FromRadians(Math.Atan2(Vector.Y, Vector.X)).Wrapped;

    /// <summary>Declination, -90° to +90°.</summary>
    public Angle Declination =>
        Angle.FromRadians(Math.Atan2(Vector.Z + 0.0, double.Hypot(Vector.X, Vector.Y)));

    /// <summary>The opposite direction.</summary>
    public SkyDirection Antipode => new(-Vector);

    /// <summary>Unit vector that points east here, along growing right ascension; at a pole that of right ascension 0h.</summary>
    public Vector3D East
    {
        get
        {
            var axis = double.Hypot(Vector.X, Vector.Y);
            return axis > 0.0 ? new(-Vector.Y / axis, Vector.X / axis, 0.0) : new(0.0, 1.0, 0.0);
        }
    }

    /// <summary>Unit vector that points north here; at a pole that of right ascension 0h.</summary>
    public Vector3D North => Vector.Cross(East);

    /// <summary>True when both are the same direction, to the last bit.</summary>
    public static bool operator ==(SkyDirection left, SkyDirection right) => left.Equals(right);

    /// <summary>True when the directions differ.</summary>
    public static bool operator !=(SkyDirection left, SkyDirection right) => !left.Equals(right);

    /// <summary>Makes a direction from right ascension and declination.</summary>
    /// <param name="rightAscension">Right ascension; any angle, whole turns do not matter.</param>
    /// <param name="declination">Declination, -90° to +90°, north positive.</param>
    /// <returns>The direction.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The declination is beyond a pole.</exception>
    /// <remarks>
    /// At a declination of ±90° the right ascension survives (the cosine of π/2 is not quite zero in double precision), so
    /// that a picture centred on a pole keeps its orientation.
    /// </remarks>
    public static SkyDirection FromRaDec(Angle rightAscension, Angle declination)
    {
        if (Math.Abs(declination.Radians) > (Math.PI / 2.0) + 1e-15)
        {
            throw new ArgumentOutOfRangeException(
                nameof(declination),
                declination.Degrees,
                "A declination lies between -90 and +90 degrees."
            );
        }

        var (sinRa, cosRa) = Math.SinCos(rightAscension.Radians);
        // A rounding step beyond the pole must not turn the right ascension by half a turn.
        var (sinDec, cosDec) = Math.SinCos(
            Math.Clamp(declination.Radians, -Math.PI / 2.0, Math.PI / 2.0)
        );
        return new(new Vector3D(cosDec * cosRa, cosDec * sinRa, sinDec));
    }

    /// <summary>Makes a direction from right ascension and declination in degrees.</summary>
    /// <param name="rightAscensionDegrees">Right ascension in degrees, finite.</param>
    /// <param name="declinationDegrees">Declination in degrees, -90 to +90.</param>
    /// <returns>The direction.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is not finite, or the declination is beyond a pole.</exception>
    public static SkyDirection FromDegrees(
        double rightAscensionDegrees,
        double declinationDegrees
    ) => FromRaDec(Angle.FromDegrees(rightAscensionDegrees), Angle.FromDegrees(declinationDegrees));

    /// <summary>Makes a direction from a vector of any length.</summary>
    /// <param name="vector">A vector, finite, longer than 1e-150 and shorter than 1e150.</param>
    /// <returns>The direction it points to.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The vector has no length, or is not finite.</exception>
    public static SkyDirection FromVector(Vector3D vector)
    {
        var length = vector.Length;
        if (!(length is > 1e-150 and < 1e150))
        {
            throw new ArgumentOutOfRangeException(
                nameof(vector),
                vector,
                "A direction needs a finite vector with a length."
            );
        }

        return new(vector * (1.0 / length));
    }

    /// <summary>The angle between two directions, 0 to 180°.</summary>
    /// <param name="other">The other direction.</param>
    /// <returns>The separation. Good to 1e-16 rad at every distance (arc tangent of cross and dot product).</returns>
    public Angle SeparationTo(SkyDirection other) =>
        Angle.FromRadians(Math.Atan2(Vector.Cross(other.Vector).Length, Vector.Dot(other.Vector)));

    /// <summary>The position angle under which another direction is seen from here.</summary>
    /// <param name="other">The other direction.</param>
    /// <returns>
    /// The position angle at this place, north through east; north where there is none: within 1e-15 rad of this place or
    /// of its antipode.
    /// </returns>
    public PositionAngle PositionAngleTo(SkyDirection other)
    {
        var east = other.Vector.Dot(East);
        var north = other.Vector.Dot(North);
        return double.Hypot(east, north) > NoDirection
            ? PositionAngle.FromAngle(Angle.FromRadians(Math.Atan2(east, north)))
            : PositionAngle.North;
    }

    /// <summary>The direction reached by going along a great circle.</summary>
    /// <param name="direction">The position angle at which to set out.</param>
    /// <param name="distance">How far to go.</param>
    /// <returns>The direction reached.</returns>
    public SkyDirection Offset(PositionAngle direction, Angle distance)
    {
        var (sinPa, cosPa) = Math.SinCos(direction.Radians);
        var (sin, cos) = Math.SinCos(distance.Radians);
        return FromVector((Vector * cos) + (((North * cosPa) + (East * sinPa)) * sin));
    }

    /// <summary>The place half way to another direction along the great circle.</summary>
    /// <param name="other">The other direction, not the antipode.</param>
    /// <returns>The midpoint.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The other direction is the antipode, which has no one midpoint.</exception>
    public SkyDirection MidpointTo(SkyDirection other)
    {
        var sum = Vector + other.Vector;
        return sum.Length > NoDirection
            ? FromVector(sum)
            : throw new ArgumentOutOfRangeException(
                nameof(other),
                other,
                "The antipode has no one midpoint: every great circle leads there."
            );
    }

    /// <inheritdoc/>
    public bool Equals(SkyDirection other) => Vector.Equals(other.Vector);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is SkyDirection other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => Vector.GetHashCode();

    /// <summary>Right ascension and declination in degrees with six decimals, in the invariant culture, for logs.</summary>
    public override string ToString() =>
        CoordinateText.RightAscensionDegrees(RightAscension)
        + ", "
        + CoordinateText.DeclinationDegrees(Declination);
}
