namespace Framing.Sky;

/// <summary>The shift of a direction because the observer moves, by the full relativistic rule.</summary>
/// <remarks>
/// Source: the addition of velocities in special relativity; ERFA 2.0.0, ab, has the same and a term of the Sun's
/// potential below 1e-7″, left out here.
/// </remarks>
internal static class Aberration
{
    /// <summary>The direction as the moving observer sees it; with the opposite velocity, the exact way back.</summary>
    /// <param name="unit">The direction as an observer at rest sees it, a unit vector.</param>
    /// <param name="velocity">The observer's velocity in units of the speed of light.</param>
    /// <returns>The shifted direction, a unit vector.</returns>
    public static Vector3D Shift(Vector3D unit, Vector3D velocity)
    {
        var contraction = Math.Sqrt(1.0 - velocity.Dot(velocity));
        var towards = unit.Dot(velocity);
        return ((unit * contraction) + (velocity * (1.0 + (towards / (1.0 + contraction)))))
            * (1.0 / (1.0 + towards));
    }
}
