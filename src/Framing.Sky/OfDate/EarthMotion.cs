namespace Framing.Sky;

/// <summary>Where the Earth is and how it moves, in ICRS axes.</summary>
/// <param name="FromSun">The Earth as seen from the Sun, au.</param>
/// <param name="Velocity">The Earth's velocity against the centre of mass of the solar system, au per Julian year.</param>
/// <param name="SunVelocity">The Sun's velocity against the same centre, au per Julian year.</param>
/// <remarks>
/// Against the full series of ERFA 2.0.0 (epv00) over 1900–2200: velocity within 1 m/s (0.0007″ of aberration), position
/// within 2000 km (2.7″ of the Sun's direction).
/// </remarks>
internal readonly record struct EarthMotion(
    Vector3D FromSun,
    Vector3D Velocity,
    Vector3D SunVelocity
)
{
    /// <summary>The motion at a time.</summary>
    /// <param name="time">The time; that terrestrial time is up to 2 ms from barycentric time does not matter here.</param>
    /// <returns>The motion.</returns>
    public static EarthMotion At(TerrestrialTime time)
    {
        var years = time.JulianYear - 2000.0;
        var (earth, earthVelocity) = Sum(EarthTerms.EarthFromSun, years);
        var (_, sunVelocity) = Sum(EarthTerms.SunFromBarycentre, years);
        return new(ToIcrs(earth), ToIcrs(earthVelocity + sunVelocity), ToIcrs(sunVelocity));
    }

    private static (Vector3D Position, Vector3D Velocity) Sum(
        ReadOnlySpan<MotionTerm> terms,
        double years
    )
    {
        Span<double> position = stackalloc double[3];
        Span<double> velocity = stackalloc double[3];
        position.Clear();
        velocity.Clear();
        foreach (ref readonly var term in terms)
        {
            var (sin, cos) = Math.SinCos(term.Phase + (term.Rate * years));
            var (factor, slope) = term.Power switch
            {
                0 => (1.0, 0.0),
                1 => (years, 1.0),
                _ => (years * years, 2.0 * years),
            };
            position[term.Axis] += term.Amplitude * factor * cos;
            velocity[term.Axis] += term.Amplitude * ((slope * cos) - (factor * term.Rate * sin));
        }

        return (
            new(position[0], position[1], position[2]),
            new(velocity[0], velocity[1], velocity[2])
        );
    }

    // The axes of the theory against ICRS, as fitted to DE405 (ERFA 2.0.0, epv00): 23°26′21.4091″ about x, 0.0475″ about z.
    private static Vector3D ToIcrs(Vector3D v) =>
        new(
            v.X + (0.000000211284 * v.Y) - (0.000000091603 * v.Z),
            (-0.000000230286 * v.X) + (0.917482137087 * v.Y) - (0.397776982902 * v.Z),
            (0.397776982902 * v.Y) + (0.917482137087 * v.Z)
        );
}
