using Framing.Sky;

namespace Framing.Catalogue;

/// <summary>One star of the embedded catalogue.</summary>
/// <param name="Direction">Place at the epoch J2000.0, ICRS.</param>
/// <param name="ProperMotion">Motion across the sky; null if it is not known.</param>
/// <param name="VMagnitude">Magnitude in Johnson's V; smaller is brighter.</param>
/// <param name="BMinusV">Colour index B-V of Johnson's system, in magnitudes, about -0.3 (blue) to 2 and more (red); null if unknown.</param>
/// <param name="Hipparcos">Number in the Hipparcos catalogue; null if the star has none.</param>
/// <remarks>
/// <list type="number">
/// <item>Places are those of the Tycho-2 catalogue (Høg et al. 2000, A&amp;A 355, L27) for all but about 700 stars, kept to
/// 0.0036 arcsec in declination and 0.0025 arcsec in right ascension.</item>
/// <item>Motions are kept to 0.1 mas a year. Fast or double stars have a motion derived from two epochs, good to 11 mas a
/// year for 95 of 100.</item>
/// <item>V of faint stars (fainter than 11) is good to 0.1 to 0.2 mag; of a variable star it is one value of many.</item>
/// <item>A close pair (below 2 arcsec) is one star; the parts of wider pairs are stars of their own.</item>
/// </list>
/// </remarks>
public readonly record struct CatalogueStar(
    SkyDirection Direction,
    ProperMotion? ProperMotion,
    double VMagnitude,
    double? BMinusV,
    int? Hipparcos
)
{
    /// <summary>The epoch of <see cref="Direction"/>: Julian year 2000.0.</summary>
    public const double CatalogueJulianYear = 2000.0;

    /// <summary>The place at another epoch, ICRS: the motion applied, the axes unchanged.</summary>
    /// <param name="julianYear">The epoch as a Julian year, 2026.93 for example.</param>
    /// <returns>The place; that of 2000.0 if no motion is known.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The year is not finite.</exception>
    public SkyDirection At(double julianYear)
    {
        if (!double.IsFinite(julianYear))
        {
            throw new ArgumentOutOfRangeException(
                nameof(julianYear),
                julianYear,
                "An epoch is a finite Julian year."
            );
        }

        return ProperMotion is { } motion
            ? motion.Apply(Direction, julianYear - CatalogueJulianYear)
            : Direction;
    }
}
