using System.Numerics;

namespace Framing.Sky;

/// <summary>CAR, plate carrée: longitude and latitude themselves. Paper II, section 5.2.3.</summary>
internal sealed class PlateProjection() : SkyProjection("CAR")
{
    public override MapFailure ToPlane(Vector3D native, out double x, out double y)
    {
        x = Degrees * Math.Atan2(native.Y, native.X);
        y = Degrees * Math.Atan2(native.Z, double.Hypot(native.X, native.Y));
        return MapFailure.None;
    }

    public override MapFailure ToSphere(double x, double y, out Vector3D native)
    {
        native = Native(x / Degrees, y / Degrees);
        return Math.Abs(y) <= 90.0 + 1e-13 && Math.Abs(x) <= 180.0 + 1e-13
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
            var inside =
                Vector.LessThanOrEqual(Vector.Abs(x[i]), Vector.Create(180.0))
                & Vector.LessThanOrEqual(Vector.Abs(y[i]), Vector.Create(90.0));
            DegreeLanes.SinCos(x[i], out var sinLongitude, out var cosLongitude);
            DegreeLanes.SinCos(y[i], out var sinLatitude, out var cosLatitude);
            x[i] = cosLatitude * cosLongitude;
            y[i] = cosLatitude * sinLongitude;
            z[i] = Where(inside, sinLatitude);
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
            var across = Vector.SquareRoot((x[i] * x[i]) + (y[i] * y[i]));
            (x[i], y[i]) = (DegreeLanes.Atan2(y[i], x[i]), DegreeLanes.AtanAcross(z[i], across));
        }
    }
}
