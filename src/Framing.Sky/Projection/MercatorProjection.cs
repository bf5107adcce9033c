namespace Framing.Sky;

/// <summary>MER, Mercator. Paper II, section 5.2.4.</summary>
internal sealed class MercatorProjection() : SkyProjection("MER")
{
    public override MapFailure ToPlane(Vector3D native, out double x, out double y)
    {
        var across = double.Hypot(native.X, native.Y);
        x = Degrees * Math.Atan2(native.Y, native.X);
        y = Degrees * Math.Asinh(native.Z / across);
        return double.IsFinite(y) ? MapFailure.None : MapFailure.OffTheMap;
    }

    public override MapFailure ToSphere(double x, double y, out Vector3D native)
    {
        var (sinLongitude, cosLongitude) = Math.SinCos(x / Degrees);
        var cos = 1.0 / Math.Cosh(y / Degrees);
        native = new(cos * cosLongitude, cos * sinLongitude, Math.Tanh(y / Degrees));
        return Math.Abs(x) <= 180.0 + 1e-13 && double.IsFinite(y)
            ? MapFailure.None
            : MapFailure.OffTheMap;
    }
}
