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
}
