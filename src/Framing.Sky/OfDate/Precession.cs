namespace Framing.Sky;

/// <summary>
/// The precession of the equator and the equinox, IAU 2006, in the four angles of Fukushima and Williams; the offset
/// between ICRS and the mean frame of J2000 is in them.
/// </summary>
/// <remarks>
/// Source: Capitaine, Wallace and Chapront, Astron. Astrophys. 412, 567–586 (2003); Hilton et al., Cel. Mech. Dyn. Astron.
/// 94, 351–367 (2006); numbers as in ERFA 2.0.0, pfw06 and obl06.
/// </remarks>
internal static class Precession
{
    /// <summary>The mean obliquity of the ecliptic of date.</summary>
    /// <param name="time">The time.</param>
    /// <returns>The angle between the mean equator and the ecliptic.</returns>
    public static Angle MeanObliquity(TerrestrialTime time) =>
        Polynomial(
            time.CenturiesSinceJ2000,
            84381.406,
            -46.836769,
            -0.0001831,
            0.00200340,
            -0.000000576,
            -0.0000000434
        );

    /// <summary>From ICRS to the mean equator and equinox of date.</summary>
    /// <param name="time">The time.</param>
    /// <returns>The rotation.</returns>
    public static Rotation ToMeanOfDate(TerrestrialTime time) => ToOfDate(time, default);

    /// <summary>From ICRS to the true equator and equinox of date.</summary>
    /// <param name="time">The time.</param>
    /// <param name="nutation">The nutation at that time.</param>
    /// <returns>The rotation.</returns>
    public static Rotation ToOfDate(TerrestrialTime time, Nutation nutation)
    {
        var t = time.CenturiesSinceJ2000;
        var gamma = Polynomial(
            t,
            -0.052928,
            10.556378,
            0.4932044,
            -0.00031238,
            -0.000002788,
            0.0000000260
        );
        var phi = Polynomial(
            t,
            84381.412819,
            -46.811016,
            0.0511268,
            0.00053289,
            -0.000000440,
            -0.0000000176
        );
        var psi = Polynomial(
            t,
            -0.041775,
            5038.481484,
            1.5584175,
            -0.00018522,
            -0.000026452,
            -0.0000000148
        );

        return Rotation.AboutX(-(MeanObliquity(time) + nutation.InObliquity))
            * Rotation.AboutZ(-(psi + nutation.InLongitude))
            * Rotation.AboutX(phi)
            * Rotation.AboutZ(gamma);
    }

    private static Angle Polynomial(double t, params ReadOnlySpan<double> arcseconds)
    {
        var sum = 0.0;
        for (var power = arcseconds.Length - 1; power >= 0; power--)
        {
            sum = (sum * t) + arcseconds[power];
        }

        return Angle.FromArcseconds(sum);
    }
}
