using Framing.Sky;

namespace Framing.Solving;

/// <summary>Which guesses are looked at at all.</summary>
/// <param name="LeastScale">Sky per pixel, radians.</param>
/// <param name="MostScale">Sky per pixel, radians.</param>
/// <param name="Near">Where the middle of the frame is expected; null for anywhere.</param>
/// <param name="Reach">How far from there it may be, radians.</param>
internal readonly record struct SearchLimits(
    double LeastScale,
    double MostScale,
    Vector3D? Near,
    double Reach
)
{
    public bool Allows(double scale) => scale >= LeastScale && scale <= MostScale;

    public bool Allows(Vector3D middle) =>
        Near is not { } near || near.Dot(middle) >= Math.Cos(Math.Min(Reach, Math.PI));
}
