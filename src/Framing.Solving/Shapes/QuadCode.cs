using System.Runtime.CompilerServices;

namespace Framing.Solving;

/// <summary>The shape of four stars in the order that goes with it: A and B are farthest apart, C and D the others.</summary>
internal readonly struct QuadCode(
    double cx,
    double cy,
    double dx,
    double dy,
    int a,
    int b,
    int c,
    int d
)
{
    public double Cx { get; } = cx;

    public double Cy { get; } = cy;

    public double Dx { get; } = dx;

    public double Dy { get; } = dy;

    public int A { get; } = a;

    public int B { get; } = b;

    public int C { get; } = c;

    public int D { get; } = d;

    /// <summary>The code of four points in a plane; not finite when they are all the same.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static QuadCode Of(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        // The six pairs, each with the two that are left.
        ReadOnlySpan<byte> pairs =
        [
            0,
            1,
            2,
            3,
            0,
            2,
            1,
            3,
            0,
            3,
            1,
            2,
            1,
            2,
            0,
            3,
            1,
            3,
            0,
            2,
            2,
            3,
            0,
            1,
        ];
        var best = 0;
        var longest = -1.0;
        for (var i = 0; i < 24; i += 4)
        {
            var length = Square(x[pairs[i + 1]] - x[pairs[i]], y[pairs[i + 1]] - y[pairs[i]]);
            if (length > longest)
            {
                (longest, best) = (length, i);
            }
        }

        return Of(x, y, pairs[best], pairs[best + 1], pairs[best + 2], pairs[best + 3]);
    }

    /// <summary>The code with a given pair as the one farthest apart, put in order.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static QuadCode Of(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        int a,
        int b,
        int c,
        int d
    )
    {
        double ux = x[b] - x[a],
            uy = y[b] - y[a];
        var scale = 1.0 / Square(ux, uy);
        var (cx, cy) = Place(x[c] - x[a], y[c] - y[a], ux, uy, scale);
        var (dx, dy) = Place(x[d] - x[a], y[d] - y[a], ux, uy, scale);
        if (cx + dx > 1.0)
        {
            (cx, cy, dx, dy) = (1.0 - cx, 1.0 - cy, 1.0 - dx, 1.0 - dy);
            (a, b) = (b, a);
        }

        return cx <= dx ? new(cx, cy, dx, dy, a, b, c, d) : new(dx, dy, cx, cy, a, b, d, c);
    }

    /// <summary>The code with A and B exchanged.</summary>
    public QuadCode Turned() => new(1.0 - Dx, 1.0 - Dy, 1.0 - Cx, 1.0 - Cy, B, A, D, C);

    /// <summary>The code with C and D exchanged.</summary>
    public QuadCode Swapped() => new(Dx, Dy, Cx, Cy, A, B, D, C);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Square(double x, double y) => (x * x) + (y * y);

    /// <summary>(p / u)(1 + i) as complex numbers: u goes to (1, 1).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static (double X, double Y) Place(
        double px,
        double py,
        double ux,
        double uy,
        double scale
    )
    {
        var along = ((px * ux) + (py * uy)) * scale;
        var across = ((py * ux) - (px * uy)) * scale;
        return (along - across, along + across);
    }
}
