using Framing.Sky;

namespace Framing.Solving;

/// <summary>The shape of four stars: what stays the same when the picture is moved, turned or scaled.</summary>
/// <param name="Cx">First coordinate of the third star.</param>
/// <param name="Cy">Second coordinate of the third star.</param>
/// <param name="Dx">First coordinate of the fourth star; not less than <paramref name="Cx"/>.</param>
/// <param name="Dy">Second coordinate of the fourth star.</param>
/// <remarks>
/// <list type="number">
/// <item>The two stars farthest apart are moved to (0, 0) and (1, 1); the coordinates are those of the two others there.</item>
/// <item>Which of the two comes first is settled by Cx + Dx not more than 1, then by Cx not more than Dx.</item>
/// <item>A mirrored picture gives the shape with x and y exchanged, put in order again.</item>
/// <item>Source: the geometric hash of Lang, Hogg, Mierle, Blanton and Roweis 2010, AJ 139, 1782.</item>
/// </list>
/// </remarks>
public readonly record struct QuadShape(double Cx, double Cy, double Dx, double Dy)
{
    /// <summary>The shape of four points.</summary>
    /// <param name="points">Four different points, in any order.</param>
    /// <returns>The shape.</returns>
    /// <exception cref="ArgumentException">Not four points, or all are the same, or one is not finite.</exception>
    public static QuadShape Of(ReadOnlySpan<PixelPosition> points)
    {
        if (points.Length != 4)
        {
            throw new ArgumentException(
                FormattableString.Invariant($"A quad has four points, not {points.Length}."),
                nameof(points)
            );
        }

        Span<double> xs = stackalloc double[4];
        Span<double> ys = stackalloc double[4];
        for (var i = 0; i < 4; i++)
        {
            (xs[i], ys[i]) = (points[i].X, points[i].Y);
        }

        var code = QuadCode.Of(xs, ys);
        return double.IsFinite(code.Cx + code.Cy + code.Dx + code.Dy)
            ? new(code.Cx, code.Cy, code.Dx, code.Dy)
            : throw new ArgumentException(
                "The points of a quad are finite and not all the same.",
                nameof(points)
            );
    }

    /// <summary>The shape of the same stars in a mirrored picture.</summary>
    public QuadShape Mirrored =>
        Cy + Dy <= 1.0 ? Ordered(Cy, Cx, Dy, Dx) : Ordered(1.0 - Cy, 1.0 - Cx, 1.0 - Dy, 1.0 - Dx);

    private static QuadShape Ordered(double cx, double cy, double dx, double dy) =>
        cx <= dx ? new(cx, cy, dx, dy) : new(dx, dy, cx, cy);
}
