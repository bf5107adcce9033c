namespace Framing.Sky;

/// <summary>The motion of a star across the sky, per Julian year.</summary>
/// <param name="RightAscensionCosDeclination">
/// Motion towards east on the sky per Julian year: the change of right ascension times the cosine of the declination, as star
/// catalogues of today give it.
/// </param>
/// <param name="Declination">Motion towards north per Julian year.</param>
/// <remarks><c>default(ProperMotion)</c> is a star at rest.</remarks>
public readonly record struct ProperMotion(Angle RightAscensionCosDeclination, Angle Declination)
{
    /// <summary>The direction some years later.</summary>
    /// <param name="direction">The direction at the epoch of the catalogue.</param>
    /// <param name="years">Julian years from that epoch; negative goes back. Finite.</param>
    /// <returns>The direction then.</returns>
    /// <exception cref="ArgumentException">The direction is <c>default</c>, which points nowhere.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The years are not finite.</exception>
    /// <remarks>
    /// The star goes straight ahead in space, at right angles to the line of sight at the epoch; so the path is a great
    /// circle, and the poles are places like any other. How its distance changes is not in it. At a pole, east is that of
    /// right ascension 0h (<see cref="SkyDirection.East"/>).
    /// </remarks>
    public SkyDirection Apply(SkyDirection direction, double years)
    {
        if (direction.IsDefault)
        {
            throw new ArgumentException(
                "The direction points nowhere (it is default).",
                nameof(direction)
            );
        }

        if (!double.IsFinite(years))
        {
            throw new ArgumentOutOfRangeException(
                nameof(years),
                years,
                "A number of years must be finite."
            );
        }

        var east = direction.East * (RightAscensionCosDeclination.Radians * years);
        var north = direction.North * (Declination.Radians * years);
        return SkyDirection.FromVector(direction.Vector + east + north);
    }
}
