namespace Framing.Sky;

/// <summary>The nutation: the nodding of the true pole about the mean pole of date.</summary>
/// <param name="InLongitude">Nutation in longitude, Δψ.</param>
/// <param name="InObliquity">Nutation in obliquity, Δε; the true obliquity is the mean one plus this.</param>
/// <remarks>
/// <para>
/// IAU 2000B: 77 luni-solar terms and a fixed offset for the planets. It stays within 0.001″ of IAU 2000A over 1995–2050
/// (McCarthy and Luzum 2003).
/// </para>
/// <para>
/// Source: McCarthy and Luzum, Cel. Mech. Dyn. Astron. 85, 37–49 (2003); arguments of Simon et al., Astron. Astrophys.
/// 282, 663–683 (1994), linear in time as the model asks; numbers as in ERFA 2.0.0, nut00b.
/// </para>
/// </remarks>
internal readonly record struct Nutation(Angle InLongitude, Angle InObliquity)
{
    private const double ArcsecondsPerTurn = 1_296_000.0;
    private const double ArcsecondsPerUnit = 1e-7;
    private const double PlanetsInLongitudeArcseconds = -0.000135;
    private const double PlanetsInObliquityArcseconds = 0.000388;

    /// <summary>The nutation at a time.</summary>
    /// <param name="time">The time.</param>
    /// <returns>The nutation.</returns>
    public static Nutation At(TerrestrialTime time)
    {
        var t = time.CenturiesSinceJ2000;
        var moonAnomaly = Argument(485868.249036, 1717915923.2178, t);
        var sunAnomaly = Argument(1287104.79305, 129596581.0481, t);
        var moonLatitude = Argument(335779.526232, 1739527262.8478, t);
        var elongation = Argument(1072260.70369, 1602961601.2090, t);
        var node = Argument(450160.398036, -6962890.5431, t);

        var longitude = 0.0;
        var obliquity = 0.0;
        foreach (ref readonly var term in NutationTerms.All)
        {
            var argument =
                (term.MoonAnomaly * moonAnomaly)
                + (term.SunAnomaly * sunAnomaly)
                + (term.MoonLatitude * moonLatitude)
                + (term.Elongation * elongation)
                + (term.Node * node);
            var (sin, cos) = Math.SinCos(argument);
            longitude +=
                ((term.LongitudeSine + (term.LongitudeSineRate * t)) * sin)
                + (term.LongitudeCosine * cos);
            obliquity +=
                ((term.ObliquityCosine + (term.ObliquityCosineRate * t)) * cos)
                + (term.ObliquitySine * sin);
        }

        return new(
            Angle.FromArcseconds((longitude * ArcsecondsPerUnit) + PlanetsInLongitudeArcseconds),
            Angle.FromArcseconds((obliquity * ArcsecondsPerUnit) + PlanetsInObliquityArcseconds)
        );
    }

    private static double Argument(double atJ2000, double perCentury, double centuries) =>
        Angle
            .FromArcseconds(
                Math.IEEERemainder(atJ2000 + (perCentury * centuries), ArcsecondsPerTurn)
            )
            .Radians;
}
