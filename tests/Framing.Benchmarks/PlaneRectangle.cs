namespace Framing.Benchmarks;

/// <summary>A rectangle of 1.5 x 1.0 in a plane.</summary>
/// <param name="X">Its middle.</param>
/// <param name="Y">Its middle.</param>
/// <param name="AngleDegrees">Its angle, anticlockwise.</param>
internal readonly record struct PlaneRectangle(double X, double Y, double AngleDegrees);
