using System.Numerics;

namespace Framing.Sky;

/// <summary>A map projection of the sphere as FITS has it: from the projection's own (native) sphere to a plane and back.</summary>
/// <remarks>
/// <para>
/// Immutable. Points of the native sphere are unit vectors: x towards native longitude 0 on its equator, y towards 90°, z
/// towards its pole. Points of the plane are FITS "degrees": intermediate world coordinates.
/// </para>
/// <para>
/// Source: Calabretta and Greisen 2002, A&amp;A 395, 1077, section 5, in vector form. What lies outside the sky of a
/// projection is refused as wcslib refuses it, with a tolerance of 1e-13 of a degree at the edges.
/// </para>
/// </remarks>
public abstract class SkyProjection
{
    /// <summary>Degrees in a radian: what the plane of a projection is scaled with.</summary>
    private protected const double Degrees = 180.0 / Math.PI;

    private protected SkyProjection(string code) => Code = code;

    /// <summary>The codes that are known, in the order of Paper II.</summary>
    public static IReadOnlyList<string> Codes { get; } =
    ["TAN", "STG", "SIN", "ARC", "ZEA", "CEA", "CAR", "MER", "AIT"];

    /// <summary>The code in CTYPE: "TAN".</summary>
    public string Code { get; }

    /// <summary>True for projections whose reference point is the native pole (TAN, STG, SIN, ARC, ZEA); else it lies at native 0, 0.</summary>
    public virtual bool IsZenithal => false;

    /// <summary>The projection of a code.</summary>
    /// <param name="code">"TAN", "SIN", ...; one of <see cref="Codes"/>.</param>
    /// <param name="first">PVi_1 of the latitude axis: slant of SIN along x, λ of CEA (1 where the header has none); else not looked at.</param>
    /// <param name="second">PVi_2 of the latitude axis: slant of SIN along y; else not looked at.</param>
    /// <returns>The projection; null where the code is not known, or λ of CEA is not between 0 (left out) and 1.</returns>
    public static SkyProjection? Find(string code, double first = 0.0, double second = 0.0) =>
        code switch
        {
            "TAN" => new TangentProjection(),
            "STG" => new StereographicProjection(),
            "SIN" => new OrthographicProjection(first, second),
            "ARC" => new EquidistantProjection(),
            "ZEA" => new EqualAreaProjection(),
            "CEA" => first is > 0.0 and <= 1.0 ? new CylinderEqualAreaProjection(first) : null,
            "CAR" => new PlateProjection(),
            "MER" => new MercatorProjection(),
            "AIT" => new HammerAitoffProjection(),
            _ => null,
        };

    /// <summary>From the native sphere to the plane.</summary>
    /// <param name="native">A unit vector of the native sphere.</param>
    /// <param name="x">x in degrees; meaningless where the answer is a failure.</param>
    /// <param name="y">y in degrees.</param>
    /// <returns>None, or why the point has no image.</returns>
    public abstract MapFailure ToPlane(Vector3D native, out double x, out double y);

    /// <summary>From the plane to the native sphere.</summary>
    /// <param name="x">x in degrees, finite.</param>
    /// <param name="y">y in degrees, finite.</param>
    /// <param name="native">The unit vector; meaningless where the answer is a failure.</param>
    /// <returns>None, or OffTheMap for a point of the plane that shows no sky.</returns>
    public abstract MapFailure ToSphere(double x, double y, out Vector3D native);

    /// <summary>From many points of the native sphere to the plane, in place; NaN where the single call shall say.</summary>
    /// <param name="x">First components of unit vectors; receives x in degrees.</param>
    /// <param name="y">Second components; receives y.</param>
    /// <param name="z">Third components.</param>
    internal virtual void ToPlane(
        Span<Vector<double>> x,
        Span<Vector<double>> y,
        Span<Vector<double>> z
    )
    {
        var eachX = PointBatches.Singles(x);
        var eachY = PointBatches.Singles(y);
        var eachZ = PointBatches.Singles(z);
        for (var i = 0; i < eachX.Length; i++)
        {
            var native = new Vector3D(eachX[i], eachY[i], eachZ[i]);
            var failure = ToPlane(native, out eachX[i], out eachY[i]);
            eachX[i] = failure == MapFailure.None ? eachX[i] : double.NaN;
        }
    }

    /// <summary>From many points of the plane to the native sphere, in place; NaN where the single call shall say.</summary>
    /// <param name="x">x in degrees; receives first components of vectors, of any length.</param>
    /// <param name="y">y in degrees; receives second components.</param>
    /// <param name="z">Receives third components.</param>
    internal virtual void ToSphere(
        Span<Vector<double>> x,
        Span<Vector<double>> y,
        Span<Vector<double>> z
    )
    {
        var eachX = PointBatches.Singles(x);
        var eachY = PointBatches.Singles(y);
        var eachZ = PointBatches.Singles(z);
        for (var i = 0; i < eachX.Length; i++)
        {
            var native = default(Vector3D);
            var found =
                double.IsFinite(eachX[i] + eachY[i])
                && ToSphere(eachX[i], eachY[i], out native) == MapFailure.None;
            (eachX[i], eachY[i], eachZ[i]) = found
                ? (native.X, native.Y, native.Z)
                : (double.NaN, double.NaN, double.NaN);
        }
    }

    /// <summary>Numbers where a condition holds, NaN elsewhere.</summary>
    private protected static Vector<double> Where(Vector<long> holds, Vector<double> numbers) =>
        Vector.ConditionalSelect(holds, numbers, Vector.Create(double.NaN));

    /// <summary>The vector of a native longitude and latitude in radians.</summary>
    private protected static Vector3D Native(double longitude, double latitude)
    {
        var (sinLongitude, cosLongitude) = Math.SinCos(longitude);
        var (sinLatitude, cosLatitude) = Math.SinCos(latitude);
        return new(cosLatitude * cosLongitude, cosLatitude * sinLongitude, sinLatitude);
    }
}
