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
}
