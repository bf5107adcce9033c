using Framing.Sky;

namespace Framing.Nights;

/// <summary>The Moon's centre as from the Earth's centre.</summary>
/// <param name="Direction">Apparent direction against the true equator and equinox of date.</param>
/// <param name="DistanceKilometres">Distance between the centres, km.</param>
/// <param name="IlluminatedFraction">The lit part of the disc, 0 (new) to 1 (full).</param>
/// <remarks>
/// Meeus, Astronomical Algorithms (1998), chapter 47, all terms; source of the theory: Chapront-Touzé and Chapront, Astron.
/// Astrophys. 190, 342 (1988). Within 0.0005° and 1 km of ERFA 2.0.0 (moon98 one light time earlier), 1990–2060.
/// </remarks>
public readonly record struct MoonPlace(
    SkyDirection Direction,
    double DistanceKilometres,
    double IlluminatedFraction
)
{
    private const double KilometresPerAstronomicalUnit = 149_597_870.7;

    /// <summary>The Moon at the time of a frame.</summary>
    /// <param name="frame">The frame of date.</param>
    /// <returns>The place.</returns>
    public static MoonPlace At(OfDateFrame frame)
    {
        ArgumentNullException.ThrowIfNull(frame);
        var (longitude, latitude, kilometres) = OfMeanEquinox(frame.Time);
        longitude += frame.NutationInLongitude.Radians;
        var (sinLong, cosLong) = Math.SinCos(longitude);
        var (sinLat, cosLat) = Math.SinCos(latitude);
        var (sinTilt, cosTilt) = Math.SinCos(frame.Obliquity.Radians);
        var y = cosLat * sinLong;
        var direction = SkyDirection.FromVector(
            new(
                cosLat * cosLong,
                (cosTilt * y) - (sinTilt * sinLat),
                (sinTilt * y) + (cosTilt * sinLat)
            )
        );
        var (sinApart, cosApart) = Math.SinCos(direction.SeparationTo(frame.Sun).Radians);
        var sun = SunDistance.AstronomicalUnits(frame.Time) * KilometresPerAstronomicalUnit;
        var phase = Math.Atan2(sun * sinApart, kilometres - (sun * cosApart));
        return new(direction, kilometres, 0.5 * (1.0 + Math.Cos(phase)));
    }

    /// <summary>Longitude and latitude in radians against the mean equinox of date, distance in km.</summary>
    internal static (double Longitude, double Latitude, double Kilometres) OfMeanEquinox(
        TerrestrialTime time
    )
    {
        var t = time.CenturiesSinceJ2000;
        var mean = Polynomial(
            t,
            218.3164477,
            481267.88123421,
            -0.0015786,
            1.0 / 538841.0,
            -1.0 / 65194000.0
        );
        var elongation = Polynomial(
            t,
            297.8501921,
            445267.1114034,
            -0.0018819,
            1.0 / 545868.0,
            -1.0 / 113065000.0
        );
        var sun = Polynomial(t, 357.5291092, 35999.0502909, -0.0001536, 1.0 / 24490000.0, 0.0);
        var moon = Polynomial(
            t,
            134.9633964,
            477198.8675055,
            0.0087414,
            1.0 / 69699.0,
            -1.0 / 14712000.0
        );
        var node = Polynomial(
            t,
            93.2720950,
            483202.0175233,
            -0.0036539,
            -1.0 / 3526000.0,
            1.0 / 863310000.0
        );
        var venus = Polynomial(t, 119.75, 131.849, 0.0, 0.0, 0.0);
        var jupiter = Polynomial(t, 53.09, 479264.290, 0.0, 0.0, 0.0);
        var third = Polynomial(t, 313.45, 481266.484, 0.0, 0.0, 0.0);
        var eccentricity = 1.0 - (t * (0.002516 + (t * 0.0000074)));

        var along = 0.0;
        var distance = 0.0;
        foreach (ref readonly var term in MoonTerms.LongitudeAndDistance)
        {
            var (sin, cos) = Math.SinCos(Argument(term));
            var factor = Damping(term);
            along += factor * term.Sine * sin;
            distance += factor * term.Cosine * cos;
        }

        var across = 0.0;
        foreach (ref readonly var term in MoonTerms.Latitude)
        {
            across += Damping(term) * term.Sine * Math.Sin(Argument(term));
        }

        along +=
            (3958.0 * Math.Sin(venus))
            + (1962.0 * Math.Sin(mean - node))
            + (318.0 * Math.Sin(jupiter));
        across +=
            (-2235.0 * Math.Sin(mean))
            + (382.0 * Math.Sin(third))
            + (175.0 * (Math.Sin(venus - node) + Math.Sin(venus + node)))
            + (127.0 * Math.Sin(mean - moon))
            - (115.0 * Math.Sin(mean + moon));
        return (
            mean + double.DegreesToRadians(along * 1e-6),
            double.DegreesToRadians(across * 1e-6),
            385000.56 + (distance / 1000.0)
        );

        double Argument(in MoonTerm term) =>
            (term.Elongation * elongation)
            + (term.SunAnomaly * sun)
            + (term.MoonAnomaly * moon)
            + (term.MoonLatitude * node);

        // The Earth's orbit grows rounder: terms with the Sun's anomaly grow smaller.
        double Damping(in MoonTerm term) =>
            Math.Abs(term.SunAnomaly) switch
            {
                0 => 1.0,
                1 => eccentricity,
                _ => eccentricity * eccentricity,
            };
    }

    private static double Polynomial(
        double t,
        double c0,
        double c1,
        double c2,
        double c3,
        double c4
    ) =>
        double.DegreesToRadians(
            Math.IEEERemainder(c0 + (t * (c1 + (t * (c2 + (t * (c3 + (t * c4))))))), 360.0)
        );
}
