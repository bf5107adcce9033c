namespace Framing.Solving;

/// <summary>A star for a polynomial fit.</summary>
/// <param name="U">Along the first axis from the middle of the frame, in half diagonals.</param>
/// <param name="V">Along the second axis.</param>
/// <param name="Xi">Its place in the tangent plane, FITS degrees.</param>
/// <param name="Eta">Its place in the tangent plane, FITS degrees.</param>
internal readonly record struct FitPoint(double U, double V, double Xi, double Eta);
