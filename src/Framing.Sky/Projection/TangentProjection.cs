using System.Numerics;

namespace Framing.Sky;

/// <summary>TAN, gnomonic: great circles are straight lines. Paper II, section 5.1.3.</summary>
internal sealed class TangentProjection() : SkyProjection("TAN")
{
    /// <summary>Sines below this are rounding of the native equator.</summary>
    private const double LeastSine = 1e-15;

    public override bool IsZenithal => true;

    public override MapFailure ToPlane(Vector3D native, out double x, out double y)
    {
        x = Degrees * native.Y / native.Z;
        y = -Degrees * native.X / native.Z;
        return native.Z > LeastSine ? MapFailure.None : MapFailure.BehindThePlane;
    }

    public override MapFailure ToSphere(double x, double y, out Vector3D native)
    {
        var (v, u) = (x / Degrees, -y / Degrees);
        var nearness = 1.0 / Math.Sqrt(1.0 + (u * u) + (v * v));
        native = new(u * nearness, v * nearness, nearness);
        return double.IsFinite(x) && double.IsFinite(y) && nearness > 0.0
            ? MapFailure.None
            : MapFailure.OffTheMap;
    }

    internal override void ToSphere(
        Span<Vector<double>> x,
        Span<Vector<double>> y,
        Span<Vector<double>> z
    )
    {
        // The vector to the plane itself; its length does not matter.
        var furthest = Vector.Create(1e100);
        for (var i = 0; i < x.Length; i++)
        {
            var (u, v) = (x[i] * (1.0 / Degrees), y[i] * (-1.0 / Degrees));
            z[i] = Where(
                Vector.LessThan(Vector.Abs(u) + Vector.Abs(v), furthest),
                Vector<double>.One
            );
            (x[i], y[i]) = (v, u);
        }
    }

    internal override void ToPlane(
        Span<Vector<double>> x,
        Span<Vector<double>> y,
        Span<Vector<double>> z
    )
    {
        // The equator to within rounding is in doubt, and what lies behind has no place.
        for (var i = 0; i < x.Length; i++)
        {
            var factor = Where(
                Vector.GreaterThan(z[i], Vector.Create(1e-12)),
                Vector.Create(Degrees) / z[i]
            );
            (x[i], y[i]) = (y[i] * factor, -x[i] * factor);
        }
    }
}
