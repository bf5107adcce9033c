namespace Framing.Sky;

/// <summary>
/// Three components in the equatorial frame: x towards right ascension 0h on the equator, y towards 6h, z towards the
/// north pole. Without a unit of its own.
/// </summary>
/// <param name="X">Component towards right ascension 0h, declination 0.</param>
/// <param name="Y">Component towards right ascension 6h, declination 0.</param>
/// <param name="Z">Component towards the north pole.</param>
public readonly record struct Vector3D(double X, double Y, double Z)
{
    /// <summary>The length of the vector.</summary>
    public double Length => Math.Sqrt((X * X) + (Y * Y) + (Z * Z));

    /// <summary>The sum of two vectors.</summary>
    public static Vector3D operator +(Vector3D left, Vector3D right) =>
        new(left.X + right.X, left.Y + right.Y, left.Z + right.Z);

    /// <summary>The difference of two vectors.</summary>
    public static Vector3D operator -(Vector3D left, Vector3D right) =>
        new(left.X - right.X, left.Y - right.Y, left.Z - right.Z);

    /// <summary>The opposite vector.</summary>
    public static Vector3D operator -(Vector3D vector) => new(-vector.X, -vector.Y, -vector.Z);

    /// <summary>A multiple of a vector.</summary>
    public static Vector3D operator *(Vector3D vector, double factor) =>
        new(vector.X * factor, vector.Y * factor, vector.Z * factor);

    /// <summary>A multiple of a vector.</summary>
    public static Vector3D operator *(double factor, Vector3D vector) => vector * factor;

    /// <summary>The scalar product.</summary>
    /// <param name="other">The other vector.</param>
    /// <returns>The product of both lengths with the cosine of the angle between them.</returns>
    public double Dot(Vector3D other) => (X * other.X) + (Y * other.Y) + (Z * other.Z);

    /// <summary>The vector product, at right angles to both by the right-hand rule.</summary>
    /// <param name="other">The other vector.</param>
    /// <returns>The vector product.</returns>
    public Vector3D Cross(Vector3D other) =>
        new(
            (Y * other.Z) - (Z * other.Y),
            (Z * other.X) - (X * other.Z),
            (X * other.Y) - (Y * other.X)
        );

    /// <summary>The vector of length 1 that points the same way.</summary>
    /// <returns>The unit vector; components that are not numbers for a vector without a length.</returns>
    public Vector3D Unit() => this * (1.0 / Length);
}
