namespace Framing.Sky;

/// <summary>AIT, Hammer-Aitoff: the whole sky in an ellipse, equal area. Paper II, section 5.3.3.</summary>
internal sealed class HammerAitoffProjection() : SkyProjection("AIT")
{
    public override MapFailure ToPlane(Vector3D native, out double x, out double y)
    {
        // Half the longitude, and cos θ cos(φ/2) = (ρ + x)/2 over cos(φ/2): written with the half angle itself.
        var across = double.Hypot(native.X, native.Y);
        var (sin, cos) = Math.SinCos(Math.Atan2(native.Y, native.X) / 2.0);
        var gamma = Degrees * Math.Sqrt(2.0 / (1.0 + (across * cos)));
        x = 2.0 * gamma * across * sin;
        y = gamma * native.Z;
        return MapFailure.None;
    }

    public override MapFailure ToSphere(double x, double y, out Vector3D native)
    {
        var (u, v) = (x / (4.0 * Degrees), y / (2.0 * Degrees));
        var square = 1.0 - (u * u) - (v * v);
        if (!(square >= 0.5 - 1e-13))
        {
            native = default;
            return MapFailure.OffTheMap;
        }

        square = Math.Max(square, 0.5);
        var z = Math.Sqrt(square);
        var longitude = 2.0 * Math.Atan2(2.0 * z * u, (2.0 * square) - 1.0);
        var sin = Math.Clamp(2.0 * z * v, -1.0, 1.0);
        var across = Math.Sqrt((1.0 - sin) * (1.0 + sin));
        var (sinLongitude, cosLongitude) = Math.SinCos(longitude);
        native = new(across * cosLongitude, across * sinLongitude, sin);
        return MapFailure.None;
    }
}
