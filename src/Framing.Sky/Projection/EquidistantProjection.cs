using System.Numerics;

namespace Framing.Sky;

/// <summary>ARC, zenithal equidistant. Paper II, section 5.1.6.</summary>
internal sealed class EquidistantProjection() : SkyProjection("ARC")
{
    public override bool IsZenithal => true;

    public override MapFailure ToPlane(Vector3D native, out double x, out double y)
    {
        var across = double.Hypot(native.X, native.Y);
        var distance = Math.Atan2(across, native.Z);
        if (across > 0.0)
        {
            var factor = Degrees * distance / across;
            (x, y) = (factor * native.Y, -factor * native.X);
        }
        else
        {
            (x, y) = (0.0, -Degrees * distance);
        }

        return MapFailure.None;
    }

    public override MapFailure ToSphere(double x, double y, out Vector3D native)
    {
        var distance = double.Hypot(x, y) / Degrees;
        var (sin, cos) = Math.SinCos(distance);
        var factor = distance > 0.0 ? sin / distance / Degrees : 1.0 / Degrees;
        native = new(-y * factor, x * factor, cos);
        return distance * Degrees <= 180.0 + 1e-13 ? MapFailure.None : MapFailure.OffTheMap;
    }

    internal override void ToSphere(
        Span<Vector<double>> x,
        Span<Vector<double>> y,
        Span<Vector<double>> z
    )
    {
        for (var i = 0; i < x.Length; i++)
        {
            // The middle itself is 0 / 0, and left to the single call.
            var distance = Vector.SquareRoot((x[i] * x[i]) + (y[i] * y[i]));
            var inside = Vector.LessThan(distance, Vector.Create(180.0 - 1e-9));
            DegreeLanes.SinCos(distance, out var sin, out var cos);
            var factor = Where(inside, sin / distance);
            (x[i], y[i], z[i]) = (-y[i] * factor, x[i] * factor, cos);
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
            var factor = DegreeLanes.Atan2(across, z[i]) / across;
            (x[i], y[i]) = (y[i] * factor, -x[i] * factor);
        }
    }
}
