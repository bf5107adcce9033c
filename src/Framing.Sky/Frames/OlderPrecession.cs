namespace Framing.Sky;

/// <summary>The precession of the older catalogues: IAU 1976 of FK5 and Newcomb's of FK4.</summary>
internal static class OlderPrecession
{
    /// <summary>From the mean frame of J2000 to that of another equinox, IAU 1976.</summary>
    /// <param name="equinox">A Julian year.</param>
    /// <returns>The rotation.</returns>
    /// <remarks>Source: Lieske and others 1977, A&amp;A 58, 1; numbers as in ERFA 2.0.0, prec76.</remarks>
    public static Rotation Iau1976(double equinox)
    {
        var t = (equinox - 2000.0) / 100.0;
        return Euler(
            (2306.2181 + ((0.30188 + (0.017998 * t)) * t)) * t,
            (2306.2181 + ((1.09468 + (0.018203 * t)) * t)) * t,
            (2004.3109 + ((-0.42665 - (0.041833 * t)) * t)) * t
        );
    }

    /// <summary>From the mean frame of an equinox to that of B1950, Newcomb.</summary>
    /// <param name="equinox">A Besselian year.</param>
    /// <returns>The rotation.</returns>
    /// <remarks>Source: Kinoshita 1975, SAO Special Report 364; checked against astropy.</remarks>
    public static Rotation NewcombToB1950(double equinox)
    {
        var since1850 = (equinox - 1850.0) / 100.0;
        var t = (1950.0 - equinox) / 100.0;
        var rate = 2303.5548 + ((1.39720 + (0.000059 * since1850)) * since1850);
        return Euler(
            (rate + ((0.30242 - (0.000269 * since1850) + (0.017996 * t)) * t)) * t,
            (rate + ((1.09478 + (0.000387 * since1850) + (0.018324 * t)) * t)) * t,
            (
                2005.1125
                + ((-0.85294 - (0.000365 * since1850)) * since1850)
                + ((-0.42647 - (0.000365 * since1850) - (0.041802 * t)) * t)
            ) * t
        );
    }

    /// <summary>R3(-z) R2(θ) R3(-ζ), all in seconds of arc.</summary>
    private static Rotation Euler(double zeta, double z, double theta) =>
        Rotation.AboutZ(Angle.FromArcseconds(-z))
        * AboutY(Angle.FromArcseconds(theta))
        * Rotation.AboutZ(Angle.FromArcseconds(-zeta));

    /// <summary>Turns the axes about y, from z towards x.</summary>
    private static Rotation AboutY(Angle angle)
    {
        var (sin, cos) = Math.SinCos(angle.Radians);
        return new(new(cos, 0.0, -sin), new(0.0, 1.0, 0.0), new(sin, 0.0, cos));
    }
}
