using System.Numerics;

namespace Framing.Sky;

/// <summary>Many points of a plane at a time, carried by a matrix.</summary>
internal static class PlaneLanes
{
    /// <summary>Each (x, y) becomes matrix · ((x, y) - from) + to.</summary>
    public static void Apply(
        PixelMatrix matrix,
        PlanePoint from,
        PlanePoint to,
        Span<Vector<double>> x,
        Span<Vector<double>> y
    )
    {
        y = y[..x.Length];
        var (m11, m12) = (Vector.Create(matrix.Cd11), Vector.Create(matrix.Cd12));
        var (m21, m22) = (Vector.Create(matrix.Cd21), Vector.Create(matrix.Cd22));
        var (fromX, fromY) = (Vector.Create(from.Xi), Vector.Create(from.Eta));
        var (toX, toY) = (Vector.Create(to.Xi), Vector.Create(to.Eta));
        for (var i = 0; i < x.Length; i++)
        {
            var (u, v) = (x[i] - fromX, y[i] - fromY);
            x[i] = Vector.MultiplyAddEstimate(m11, u, m12 * v) + toX;
            y[i] = Vector.MultiplyAddEstimate(m21, u, m22 * v) + toY;
        }
    }

    /// <summary>Each point is moved by the same step.</summary>
    public static void Shift(PlanePoint step, Span<Vector<double>> x, Span<Vector<double>> y)
    {
        y = y[..x.Length];
        var (stepX, stepY) = (Vector.Create(step.Xi), Vector.Create(step.Eta));
        for (var i = 0; i < x.Length; i++)
        {
            x[i] += stepX;
            y[i] += stepY;
        }
    }
}
