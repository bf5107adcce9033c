namespace Framing.Sky;

/// <summary>A rotation of the axes, as the three unit vectors of the new frame in the old one.</summary>
/// <param name="X">The new x axis.</param>
/// <param name="Y">The new y axis.</param>
/// <param name="Z">The new z axis.</param>
internal readonly record struct Rotation(Vector3D X, Vector3D Y, Vector3D Z)
{
    /// <summary>First the right rotation, then the left one.</summary>
    public static Rotation operator *(Rotation left, Rotation right) =>
        new(right.Undo(left.X), right.Undo(left.Y), right.Undo(left.Z));

    /// <summary>Turns the axes about x, from y towards z.</summary>
    public static Rotation AboutX(Angle angle)
    {
        var (sin, cos) = Math.SinCos(angle.Radians);
        return new(new(1.0, 0.0, 0.0), new(0.0, cos, sin), new(0.0, -sin, cos));
    }

    /// <summary>Turns the axes about z, from x towards y.</summary>
    public static Rotation AboutZ(Angle angle)
    {
        var (sin, cos) = Math.SinCos(angle.Radians);
        return new(new(cos, sin, 0.0), new(-sin, cos, 0.0), new(0.0, 0.0, 1.0));
    }

    /// <summary>A vector of the old frame in the new one.</summary>
    public Vector3D Apply(Vector3D vector) => new(X.Dot(vector), Y.Dot(vector), Z.Dot(vector));

    /// <summary>A vector of the new frame in the old one.</summary>
    public Vector3D Undo(Vector3D vector) => (X * vector.X) + (Y * vector.Y) + (Z * vector.Z);
}
