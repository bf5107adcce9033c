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
}
