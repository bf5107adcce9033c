namespace Framing.Nights;

/// <summary>One periodic term of the Moon's place.</summary>
/// <param name="Elongation">Factor of the mean elongation of the Moon from the Sun.</param>
/// <param name="SunAnomaly">Factor of the Sun's mean anomaly.</param>
/// <param name="MoonAnomaly">Factor of the Moon's mean anomaly.</param>
/// <param name="MoonLatitude">Factor of the Moon's mean argument of latitude.</param>
/// <param name="Sine">Amplitude of the sine, 1e-6 degree.</param>
/// <param name="Cosine">Amplitude of the cosine in the distance, metres; 0 for latitudes.</param>
internal readonly record struct MoonTerm(
    double Elongation,
    int SunAnomaly,
    double MoonAnomaly,
    double MoonLatitude,
    double Sine,
    double Cosine
);
