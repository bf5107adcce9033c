using System.Runtime.CompilerServices;
using Framing.Sky;

namespace Framing.Solving;

/// <summary>A guess of where a frame points: its tangent plane and the linear map from the plane to the frame's pixels.</summary>
/// <param name="centre">The tangent point, a unit vector.</param>
/// <param name="east">Growing ξ.</param>
/// <param name="north">Growing η.</param>
internal sealed class PlaneMap(Vector3D centre, Vector3D east, Vector3D north)
{
    public Vector3D Centre { get; } = centre;

    /// <summary>u = U0 + UXi ξ + UEta η, in pixels from the middle of the frame; ξ and η are tangents.</summary>
    public double U0 { get; private set; }

    public double UXi { get; private set; }

    public double UEta { get; private set; }

    public double V0 { get; private set; }

    public double VXi { get; private set; }

    public double VEta { get; private set; }

    /// <summary>Radial distortion: places move by this times their distance cubed; per square pixel.</summary>
    public double Cube { get; private set; }

    /// <summary>Sky per pixel, radians.</summary>
    public double Scale => 1.0 / Math.Sqrt(Math.Abs((UXi * VEta) - (UEta * VXi)));

    public bool IsMirrored => (UXi * VEta) - (UEta * VXi) > 0.0;

    /// <summary>How far the map is from square pixels: relative difference of the axes and skew together.</summary>
    public double Strain
    {
        get
        {
            var sum = (UXi * UXi) + (UEta * UEta) + (VXi * VXi) + (VEta * VEta);
            var det = Math.Abs((UXi * VEta) - (UEta * VXi));
            return Math.Sqrt(Math.Max(0.0, (sum / (2.0 * det)) - 1.0));
        }
    }

    public static PlaneMap At(Vector3D direction)
    {
        var sky = SkyDirection.FromVector(direction);
        return new(sky.Vector, sky.East, sky.North);
    }

    /// <summary>Where a direction appears; false behind the plane or far from it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public bool TryPlace(Vector3D direction, out double u, out double v)
    {
        var cosine = direction.Dot(Centre);
        if (cosine < 0.1)
        {
            (u, v) = (0.0, 0.0);
            return false;
        }

        var xi = direction.Dot(east) / cosine;
        var eta = direction.Dot(north) / cosine;
        u = U0 + (UXi * xi) + (UEta * eta);
        v = V0 + (VXi * xi) + (VEta * eta);
        var pull = 1.0 + (Cube * ((u * u) + (v * v)));
        (u, v) = (u * pull, v * pull);
        return true;
    }

    /// <summary>The direction at the middle of the frame.</summary>
    public Vector3D Middle()
    {
        var det = (UXi * VEta) - (UEta * VXi);
        var xi = ((-U0 * VEta) + (V0 * UEta)) / det;
        var eta = ((-V0 * UXi) + (U0 * VXi)) / det;
        var vector = Centre + (east * xi) + (north * eta);
        return vector * (1.0 / vector.Length);
    }

    /// <summary>Fits a similarity: turn, scale and shift, of the given parity.</summary>
    /// <returns>The root mean square distance, pixels.</returns>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double FitSimilar(
        ReadOnlySpan<Vector3D> directions,
        ReadOnlySpan<double> us,
        ReadOnlySpan<double> vs,
        bool mirrored
    )
    {
        var n = directions.Length;
        var sign = mirrored ? 1.0 : -1.0;
        Span<double> xis = stackalloc double[n];
        Span<double> etas = stackalloc double[n];
        double mx = 0.0,
            my = 0.0,
            mu = 0.0,
            mv = 0.0;
        for (var i = 0; i < n; i++)
        {
            var cosine = directions[i].Dot(Centre);
            xis[i] = sign * directions[i].Dot(east) / cosine;
            etas[i] = directions[i].Dot(north) / cosine;
            mx += xis[i];
            my += etas[i];
            mu += us[i];
            mv += vs[i];
        }

        (mx, my, mu, mv) = (mx / n, my / n, mu / n, mv / n);
        double re = 0.0,
            im = 0.0,
            square = 0.0;
        for (var i = 0; i < n; i++)
        {
            double x = xis[i] - mx,
                y = etas[i] - my,
                u = us[i] - mu,
                v = vs[i] - mv;
            re += (u * x) + (v * y);
            im += (v * x) - (u * y);
            square += (x * x) + (y * y);
        }

        (re, im) = (re / square, im / square);
        (UXi, UEta, VXi, VEta) = (sign * re, -im, sign * im, re);
        U0 = mu - (re * mx) + (im * my);
        V0 = mv - (im * mx) - (re * my);
        var sum = 0.0;
        for (var i = 0; i < n; i++)
        {
            var du = us[i] - (U0 + (re * xis[i]) - (im * etas[i]));
            var dv = vs[i] - (V0 + (im * xis[i]) + (re * etas[i]));
            sum += (du * du) + (dv * dv);
        }

        return Math.Sqrt(sum / n);
    }

    /// <summary>Fits any linear map, and the radial distortion beside it.</summary>
    /// <param name="directions">Where the stars are.</param>
    /// <param name="us">Where they are seen.</param>
    /// <param name="vs">Where they are seen.</param>
    /// <param name="half">Half the frame's diagonal, pixels.</param>
    /// <param name="bent">False for a linear map alone.</param>
    /// <returns>False when the stars do not settle it.</returns>
    public bool TryFit(
        ReadOnlySpan<Vector3D> directions,
        ReadOnlySpan<double> us,
        ReadOnlySpan<double> vs,
        double half,
        bool bent
    )
    {
        // In units of half diagonals, so that all unknowns are of like size.
        var size = 1.0 / (Scale * half);
        var equations = new NormalEquations(bent ? 7 : 6);
        for (var i = 0; i < directions.Length; i++)
        {
            var cosine = directions[i].Dot(Centre);
            var xi = directions[i].Dot(east) / cosine * size;
            var eta = directions[i].Dot(north) / cosine * size;
            double u = us[i] / half,
                v = vs[i] / half;
            var square = (u * u) + (v * v);
            ReadOnlySpan<double> forU = [1.0, xi, eta, 0.0, 0.0, 0.0, u * square];
            ReadOnlySpan<double> forV = [0.0, 0.0, 0.0, 1.0, xi, eta, v * square];
            equations.Add(forU[..(bent ? 7 : 6)], u);
            equations.Add(forV[..(bent ? 7 : 6)], v);
        }

        if (equations.Inverse() is not { } inverse)
        {
            return false;
        }

        var solved = equations.Solve(inverse, 0);
        (U0, UXi, UEta) = (solved[0] * half, solved[1] * half * size, solved[2] * half * size);
        (V0, VXi, VEta) = (solved[3] * half, solved[4] * half * size, solved[5] * half * size);
        Cube = bent ? solved[6] / (half * half) : 0.0;
        return true;
    }
}
