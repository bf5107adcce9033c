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
}
