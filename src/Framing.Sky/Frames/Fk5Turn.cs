namespace Framing.Sky;

/// <summary>The turn between FK5 of J2000 and the Hipparcos frame, which is ICRS to within its errors.</summary>
/// <remarks>
/// Source: Mignard and Froeschlé 2000, A&amp;A 354, 732: -19.9, -9.1 and 22.9 mas about x, y and z; as in ERFA 2.0.0, fk5hip.
/// The spin of 0.7 mas a year is left out: a picture holds places, not motions.
/// </remarks>
internal static class Fk5Turn
{
    /// <summary>From ICRS to FK5 of J2000.</summary>
    public static Rotation Inverse { get; } = Of(19.9e-3, 9.1e-3, -22.9e-3);

    private static Rotation Of(double x, double y, double z)
    {
        // The axes turned about one vector by its length (Rodrigues).
        var turn = new Vector3D(x, y, z) * Angle.FromArcseconds(1.0).Radians;
        var axis = turn.Unit();
        var (sin, cos) = Math.SinCos(turn.Length);
        return new(Axis(new(1.0, 0.0, 0.0)), Axis(new(0.0, 1.0, 0.0)), Axis(new(0.0, 0.0, 1.0)));

        Vector3D Axis(Vector3D v) =>
            (v * cos) + (axis.Cross(v) * sin) + (axis * (axis.Dot(v) * (1.0 - cos)));
    }
}
