using System.Numerics;

namespace Framing.Sky;

/// <summary>SIN, orthographic, also the slant form of synthesis arrays. Paper II, section 5.1.5.</summary>
/// <param name="xi">PVi_1: the slant along x, ξ.</param>
/// <param name="eta">PVi_2: the slant along y, η.</param>
internal sealed class OrthographicProjection(double xi, double eta) : SkyProjection("SIN")
{
    /// <summary>How far beyond the rim rounding may carry a point.</summary>
    private const double Tolerance = 1e-13;

    public override bool IsZenithal => true;

    /// <summary>PVi_1.</summary>
    public double Xi => xi;

    /// <summary>PVi_2.</summary>
    public double Eta => eta;

    public override MapFailure ToPlane(Vector3D native, out double x, out double y)
    {
        // 1 - sin θ without cancelling near the pole.
        var depth = Depth(native);
        x = Degrees * (native.Y + (xi * depth));
        y = Degrees * ((eta * depth) - native.X);

        // The rim is where the line of projection touches the sphere.
        return native.Z + (xi * native.Y) - (eta * native.X) >= 0.0
            ? MapFailure.None
            : MapFailure.BehindThePlane;
    }

    public override MapFailure ToSphere(double x, double y, out Vector3D native)
    {
        // (x - ξt)² + (ηt - y)² + (1 - t)² = 1 with t = 1 - sin θ: the root nearer to the pole.
        var (v, w) = (x / Degrees, y / Degrees);
        var a = 1.0 + (xi * xi) + (eta * eta);
        var b = 1.0 + (xi * v) + (eta * w);
        var c = (v * v) + (w * w);
        var discriminant = (b * b) - (a * c);
        if (!(discriminant >= -Tolerance * b * b) || b <= 0.0)
        {
            native = default;
            return MapFailure.OffTheMap;
        }

        var t = c / (b + Math.Sqrt(Math.Max(discriminant, 0.0)));
        native = new((eta * t) - w, v - (xi * t), 1.0 - t);
        return t <= 2.0 + Tolerance ? MapFailure.None : MapFailure.OffTheMap;
    }

    private static double Depth(Vector3D native) =>
        native.Z > 0.0
            ? ((native.X * native.X) + (native.Y * native.Y)) / (1.0 + native.Z)
            : 1.0 - native.Z;

    internal override void ToSphere(
        Span<Vector<double>> x,
        Span<Vector<double>> y,
        Span<Vector<double>> z
    )
    {
        var a = Vector.Create(1.0 + (xi * xi) + (eta * eta));
        for (var i = 0; i < x.Length; i++)
        {
            var (v, w) = (x[i] * (1.0 / Degrees), y[i] * (1.0 / Degrees));
            var b = Vector<double>.One + (v * xi) + (w * eta);
            var c = (v * v) + (w * w);
            var discriminant = (b * b) - (a * c);
            var t = c / (b + Vector.SquareRoot(discriminant));
            var inside =
                Vector.GreaterThan(discriminant, b * b * 1e-9)
                & Vector.GreaterThan(b, Vector<double>.Zero)
                & Vector.LessThan(t, Vector.Create(2.0 - 1e-9));
            x[i] = (t * eta) - w;
            y[i] = v - (t * xi);
            z[i] = Where(inside, Vector<double>.One - t);
        }
    }

    internal override void ToPlane(
        Span<Vector<double>> x,
        Span<Vector<double>> y,
        Span<Vector<double>> z
    )
    {
        for (var i = 0; i < x.Length; i++)
        {
            var front = Vector.GreaterThan(z[i], Vector<double>.Zero);
            var depth = Vector.ConditionalSelect(
                front,
                ((x[i] * x[i]) + (y[i] * y[i])) / (Vector<double>.One + z[i]),
                Vector<double>.One - z[i]
            );
            var inside = Vector.GreaterThan(
                z[i] + (y[i] * xi) - (x[i] * eta),
                Vector.Create(1e-12)
            );
            (x[i], y[i]) = (
                Where(inside, (y[i] + (depth * xi)) * Degrees),
                ((depth * eta) - x[i]) * Degrees
            );
        }
    }
}
