namespace Framing.Sky;

/// <summary>One term of the nutation series.</summary>
/// <param name="MoonAnomaly">Factor of the Moon's mean anomaly.</param>
/// <param name="SunAnomaly">Factor of the Sun's mean anomaly.</param>
/// <param name="MoonLatitude">Factor of the Moon's mean argument of latitude.</param>
/// <param name="Elongation">Factor of the mean elongation of the Moon from the Sun.</param>
/// <param name="Node">Factor of the mean longitude of the Moon's ascending node.</param>
/// <param name="LongitudeSine">Sine amplitude in longitude, 0.1 microarcsecond.</param>
/// <param name="LongitudeSineRate">Its change per Julian century.</param>
/// <param name="LongitudeCosine">Cosine amplitude in longitude, 0.1 microarcsecond.</param>
/// <param name="ObliquityCosine">Cosine amplitude in obliquity, 0.1 microarcsecond.</param>
/// <param name="ObliquityCosineRate">Its change per Julian century.</param>
/// <param name="ObliquitySine">Sine amplitude in obliquity, 0.1 microarcsecond.</param>
internal readonly record struct NutationTerm(
    double MoonAnomaly,
    double SunAnomaly,
    double MoonLatitude,
    double Elongation,
    double Node,
    double LongitudeSine,
    double LongitudeSineRate,
    double LongitudeCosine,
    double ObliquityCosine,
    double ObliquityCosineRate,
    double ObliquitySine
);
