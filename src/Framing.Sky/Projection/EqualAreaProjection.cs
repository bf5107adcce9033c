using System.Numerics;

namespace Framing.Sky;

/// <summary>ZEA, zenithal equal area. Paper II, section 5.1.7.</summary>
internal sealed class EqualAreaProjection() : SkyProjection("ZEA")
{
    public override bool IsZenithal => true;

    public override MapFailure ToPlane(Vector3D native, out double x, out double y)
    {
        // sqrt(2 (1 - z)) over the distance from the axis; sqrt(2 / (1 + z)) is the same without cancelling.
        var across = double.Hypot(native.X, native.Y);
        if (native.Z > 0.0)
        {
            var factor = Degrees * Math.Sqrt(2.0 / (1.0 + native.Z));
            (x, y) = (factor * native.Y, -factor * native.X);
        }
        else if (across > 0.0)
        {
            var factor = Degrees * Math.Sqrt(2.0 * (1.0 - native.Z)) / across;
            (x, y) = (factor * native.Y, -factor * native.X);
        }
        else
        {
            (x, y) = (0.0, -2.0 * Degrees);
        }

        return MapFailure.None;
    }

    public override MapFailure ToSphere(double x, double y, out Vector3D native)
    {
        var (v, u) = (x / Degrees, -y / Degrees);
        var square = ((u * u) + (v * v)) / 4.0;
        var factor = Math.Sqrt(Math.Max(1.0 - square, 0.0));
        native = new(u * factor, v * factor, Math.Max(1.0 - (2.0 * square), -1.0));
        return square <= 1.0 + 1e-12 ? MapFailure.None : MapFailure.OffTheMap;
    }

    internal override void ToSphere(
        Span<Vector<double>> x,
        Span<Vector<double>> y,
        Span<Vector<double>> z
    )
    {
        for (var i = 0; i < x.Length; i++)
        {
            var (v, u) = (x[i] * (1.0 / Degrees), y[i] * (-1.0 / Degrees));
            var square = ((u * u) + (v * v)) * 0.25;
            var factor = Vector.SquareRoot(Vector<double>.One - square);
            (x[i], y[i]) = (u * factor, v * factor);
            z[i] = Where(
                Vector.LessThan(square, Vector.Create(1.0 - 1e-9)),
                Vector<double>.One - (square + square)
            );
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
            // 1 + z, or the same without cancelling.
            var across = (x[i] * x[i]) + (y[i] * y[i]);
            var front = Vector.GreaterThan(z[i], Vector<double>.Zero);
            var depth = Vector.ConditionalSelect(
                front,
                Vector<double>.One + z[i],
                across / (Vector<double>.One - z[i])
            );
            var factor =
                Where(
                    Vector.GreaterThan(depth, Vector.Create(1e-20)),
                    Vector.SquareRoot(Vector.Create(2.0) / depth)
                ) * Degrees;
            (x[i], y[i]) = (y[i] * factor, -x[i] * factor);
        }
    }
}
