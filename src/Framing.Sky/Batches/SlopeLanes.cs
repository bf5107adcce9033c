using System.Numerics;

namespace Framing.Sky;

/// <summary>The derivatives of a map of the plane at several places.</summary>
/// <param name="Uu">The first image coordinate by the first variable.</param>
/// <param name="Uv">The first image coordinate by the second variable.</param>
/// <param name="Vu">The second image coordinate by the first variable.</param>
/// <param name="Vv">The second image coordinate by the second variable.</param>
internal readonly record struct SlopeLanes(
    Vector<double> Uu,
    Vector<double> Uv,
    Vector<double> Vu,
    Vector<double> Vv
);
