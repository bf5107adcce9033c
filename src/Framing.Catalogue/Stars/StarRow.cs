namespace Framing.Catalogue;

/// <summary>A star as plain numbers, for work on all stars at once.</summary>
/// <param name="RightAscensionDegrees">Right ascension at 2000.0, ICRS, 0 to 360.</param>
/// <param name="DeclinationDegrees">Declination at 2000.0, ICRS.</param>
/// <param name="EastMasPerYear">Motion towards east on the sky, milliarcseconds a Julian year; 0 if unknown.</param>
/// <param name="NorthMasPerYear">Motion towards north; 0 if unknown.</param>
/// <param name="VMagnitude">V.</param>
public readonly record struct StarRow(
    double RightAscensionDegrees,
    double DeclinationDegrees,
    float EastMasPerYear,
    float NorthMasPerYear,
    float VMagnitude
);
