namespace Framing.Catalogue;

/// <summary>One cell of the sky: which stars of the table lie in it, and where its corner is.</summary>
/// <param name="First">Its first, brightest star.</param>
/// <param name="End">One past its last star.</param>
/// <param name="FirstNumber">Where its Hipparcos numbers begin.</param>
/// <param name="WestDegrees">Right ascension of its western edge.</param>
/// <param name="WidthDegrees">Its extent in right ascension.</param>
/// <param name="SouthDegrees">Declination of its southern edge.</param>
internal readonly record struct StarCell(
    int First,
    int End,
    int FirstNumber,
    double WestDegrees,
    double WidthDegrees,
    double SouthDegrees
);
