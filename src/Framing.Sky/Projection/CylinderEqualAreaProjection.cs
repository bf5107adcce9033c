using System.Numerics;

namespace Framing.Sky;

/// <summary>CEA, cylindrical equal area. Paper II, section 5.2.2.</summary>
/// <param name="lambda">PVi_1: the square of the cosine of the latitude at which shapes are kept, more than 0, at most 1.</param>
internal sealed class CylinderEqualAreaProjection(double lambda) : SkyProjection("CEA")
{
    public override MapFailure ToPlane(Vector3D native, out double x, out double y)
    {
        x = Degrees * Math.Atan2(native.Y, native.X);
        y = Degrees * native.Z / lambda;
        return MapFailure.None;
    }

    public override MapFailure ToSphere(double x, double y, out Vector3D native)
    {
        var sin = y * lambda / Degrees;
        var (sinLongitude, cosLongitude) = Math.SinCos(x / Degrees);
        var cos = Math.Sqrt(Math.Max((1.0 - sin) * (1.0 + sin), 0.0));
        native = new(cos * cosLongitude, cos * sinLongitude, Math.Clamp(sin, -1.0, 1.0));
        return Math.Abs(sin) <= 1.0 + 1e-13 && Math.Abs(x) <= 180.0 + 1e-13
            ? MapFailure.None
            : MapFailure.OffTheMap;
    }

    internal override void ToSphere(
        Span<Vector<double>> x,
        Span<Vector<double>> y,
        Span<Vector<double>> z
    )
    {
        for (var i = 0; i < x.Length; i++)
        {
            var sin = y[i] * (lambda / Degrees);
            var inside =
                Vector.LessThanOrEqual(Vector.Abs(x[i]), Vector.Create(180.0))
                & Vector.LessThan(Vector.Abs(sin), Vector.Create(1.0 - 1e-9));
            DegreeLanes.SinCos(x[i], out var sinLongitude, out var cosLongitude);
            var cos = Vector.SquareRoot((Vector<double>.One - sin) * (Vector<double>.One + sin));
            (x[i], y[i]) = (cos * cosLongitude, cos * sinLongitude);
            z[i] = Where(inside, sin);
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
            (x[i], y[i]) = (DegreeLanes.Atan2(y[i], x[i]), z[i] * (Degrees / lambda));
        }
    }
}
