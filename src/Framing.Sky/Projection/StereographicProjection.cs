using System.Numerics;

namespace Framing.Sky;

/// <summary>STG, stereographic: angles are kept. Paper II, section 5.1.4.</summary>
internal sealed class StereographicProjection() : SkyProjection("STG")
{
    public override bool IsZenithal => true;

    public override MapFailure ToPlane(Vector3D native, out double x, out double y)
    {
        // 2 / (1 + z) = 2 (1 - z) / (x² + y²): the second form does not cancel on the far half.
        var across = (native.X * native.X) + (native.Y * native.Y);
        var factor =
            2.0 * Degrees * (native.Z > 0.0 ? 1.0 / (1.0 + native.Z) : (1.0 - native.Z) / across);
        x = factor * native.Y;
        y = -factor * native.X;
        return double.IsFinite(factor) ? MapFailure.None : MapFailure.OffTheMap;
    }

    public override MapFailure ToSphere(double x, double y, out Vector3D native)
    {
        var (v, u) = (x / (2.0 * Degrees), -y / (2.0 * Degrees));
        var square = (u * u) + (v * v);
        var factor = 2.0 / (1.0 + square);
        native = new(u * factor, v * factor, (1.0 - square) / (1.0 + square));
        return double.IsFinite(square) ? MapFailure.None : MapFailure.OffTheMap;
    }

    internal override void ToSphere(
        Span<Vector<double>> x,
        Span<Vector<double>> y,
        Span<Vector<double>> z
    )
    {
        var furthest = Vector.Create(1e70);
        for (var i = 0; i < x.Length; i++)
        {
            var (v, u) = (x[i] * (0.5 / Degrees), y[i] * (-0.5 / Degrees));
            var square = (u * u) + (v * v);
            (x[i], y[i]) = (u + u, v + v);
            z[i] = Where(Vector.LessThan(square, furthest), Vector<double>.One - square);
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
            var factor = Where(
                Vector.GreaterThan(depth, Vector.Create(1e-20)),
                Vector.Create(2.0 * Degrees) / depth
            );
            (x[i], y[i]) = (y[i] * factor, -x[i] * factor);
        }
    }
}
