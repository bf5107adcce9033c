namespace Framing.Sky;

/// <summary>How the native sphere of a projection lies on the sky: the directions of its three axes.</summary>
/// <remarks>
/// Source: Calabretta and Greisen 2002, A&amp;A 395, 1077, sections 2.2 to 2.5. <c>default(NativeSphere)</c> is none.
/// </remarks>
public readonly record struct NativeSphere
{
    /// <summary>Cosines below this are rounding of a right angle.</summary>
    private const double Rounding = 1e-10;

    private NativeSphere(Vector3D x, Vector3D y, Vector3D z) => (X, Y, Z) = (x, y, z);

    /// <summary>The direction of native longitude 0 on the native equator.</summary>
    public Vector3D X { get; }

    /// <summary>The direction of native longitude 90° on the native equator.</summary>
    public Vector3D Y { get; }

    /// <summary>The direction of the native pole.</summary>
    public Vector3D Z { get; }

    /// <summary>The sphere of a zenithal projection about a direction, LONPOLE being 180°.</summary>
    /// <param name="centre">The direction of the native pole, the middle of the projection.</param>
    /// <returns>The sphere: the plane's x points east and its y north.</returns>
    public static NativeSphere About(SkyDirection centre) =>
        new(-centre.North, centre.East, centre.Vector);

    /// <summary>Finds the native sphere from the cards of a header.</summary>
    /// <param name="longitude">CRVAL of the longitude axis, degrees.</param>
    /// <param name="latitude">CRVAL of the latitude axis, degrees, -90 to +90.</param>
    /// <param name="fiducialLongitude">Native longitude of the point that lies there, degrees; 0 unless PVi_1 says otherwise.</param>
    /// <param name="fiducialLatitude">Its native latitude, degrees: 90 for a zenithal projection, 0 for the others, unless PVi_2 says otherwise.</param>
    /// <param name="longitudeOfPole">
    /// LONPOLE, degrees: the native longitude of the celestial pole. Without it the fiducial longitude, and 180° more where
    /// the reference point lies south of its native latitude.
    /// </param>
    /// <param name="latitudeOfPole">LATPOLE, degrees: it chooses between two solutions. Without it 90.</param>
    /// <param name="sphere">The sphere; meaningless when the answer is false.</param>
    /// <returns>False where the values contradict each other: no sphere has them.</returns>
    public static bool TryFind(
        double longitude,
        double latitude,
        double fiducialLongitude,
        double fiducialLatitude,
        double? longitudeOfPole,
        double? latitudeOfPole,
        out NativeSphere sphere
    )
    {
        var phiP =
            longitudeOfPole ?? (fiducialLongitude + (latitude < fiducialLatitude ? 180.0 : 0.0));
        sphere = default;
        double poleLongitude;
        double poleLatitude;
        if (fiducialLatitude == 90.0)
        {
            (poleLongitude, poleLatitude) = (longitude, latitude);
        }
        else if (
            !TryPole(
                longitude,
                latitude,
                phiP - fiducialLongitude,
                fiducialLatitude,
                latitudeOfPole ?? 90.0,
                out poleLongitude,
                out poleLatitude
            )
        )
        {
            return false;
        }

        sphere = Of(poleLongitude, poleLatitude, phiP);
        return true;
    }

    /// <summary>The direction of a point of the native sphere.</summary>
    /// <param name="native">A unit vector of the native sphere.</param>
    /// <returns>The direction.</returns>
    public SkyDirection ToSky(Vector3D native) =>
        SkyDirection.FromVector((X * native.X) + (Y * native.Y) + (Z * native.Z));

    /// <summary>The point of the native sphere that lies at a direction.</summary>
    /// <param name="direction">The direction.</param>
    /// <returns>A unit vector of the native sphere.</returns>
    public Vector3D ToNative(SkyDirection direction)
    {
        var v = direction.Vector;
        return new(X.Dot(v), Y.Dot(v), Z.Dot(v));
    }

    /// <summary>The same sphere in another frame.</summary>
    /// <param name="carry">Carries directions to that frame; a turn of the whole sky.</param>
    /// <returns>The sphere with its axes carried.</returns>
    public NativeSphere Carried(Func<SkyDirection, SkyDirection> carry)
    {
        ArgumentNullException.ThrowIfNull(carry);
        return new(Carry(X), Carry(Y), Carry(Z));

        Vector3D Carry(Vector3D axis) => carry(SkyDirection.FromVector(axis)).Vector;
    }

    /// <summary>Paper II, equations 8 to 10: the celestial place of the native pole.</summary>
    private static bool TryPole(
        double longitude,
        double latitude,
        double turn,
        double fiducialLatitude,
        double wanted,
        out double poleLongitude,
        out double poleLatitude
    )
    {
        var (sinTurn, cosTurn) = SinCos(turn);
        var (sinLatitude, cosLatitude) = SinCos(latitude);
        var (sinFiducial, cosFiducial) = SinCos(fiducialLatitude);
        var along = cosFiducial * cosTurn;
        var size = double.Hypot(along, sinFiducial);
        poleLongitude = 0.0;
        if (size < 1e-15)
        {
            // The celestial pole lies 90° from the fiducial point whatever its latitude: LATPOLE alone says it.
            poleLatitude = wanted;
            if (Math.Abs(sinLatitude) > 1e-12)
            {
                return false;
            }
        }
        else
        {
            var ratio = sinLatitude / size;
            if (Math.Abs(ratio) > 1.0 + Rounding)
            {
                poleLatitude = 0.0;
                return false;
            }

            var u = Math.Atan2(sinFiducial, along) * 180.0 / Math.PI;
            var v = Math.Acos(Math.Clamp(ratio, -1.0, 1.0)) * 180.0 / Math.PI;
            if (!TryNearest(u + v, u - v, wanted, out poleLatitude))
            {
                return false;
            }
        }

        var (sinPole, cosPole) = SinCos(poleLatitude);
        var nearness = cosPole * cosLatitude;
        if (Math.Abs(nearness) >= Rounding)
        {
            var x = (sinFiducial - (sinPole * sinLatitude)) / nearness;
            var y = sinTurn * cosFiducial / cosLatitude;
            poleLongitude = longitude - (Math.Atan2(y, x) * 180.0 / Math.PI);
            return x != 0.0 || y != 0.0;
        }

        poleLongitude =
            Math.Abs(cosLatitude) < Rounding ? longitude
            : poleLatitude > 0.0 ? longitude + turn - 180.0
            : longitude - turn;
        return true;
    }

    private static bool TryNearest(double first, double second, double wanted, out double latitude)
    {
        (first, second) = (Math.IEEERemainder(first, 360.0), Math.IEEERemainder(second, 360.0));
        if (Math.Abs(wanted - second) <= Math.Abs(wanted - first))
        {
            (first, second) = (second, first);
        }

        latitude = Math.Abs(first) <= 90.0 + Rounding ? first : second;
        var found = Math.Abs(latitude) <= 90.0 + Rounding;
        latitude = Math.Clamp(latitude, -90.0, 90.0);
        return found;
    }

    private static NativeSphere Of(double poleLongitude, double poleLatitude, double phiP)
    {
        var (sinPhi, cosPhi) = SinCos(phiP);
        var (sinDec, cosDec) = SinCos(poleLatitude);
        var (sinRa, cosRa) = SinCos(poleLongitude);
        return new(
            Turned(new(-cosPhi * sinDec, sinPhi, cosPhi * cosDec)),
            Turned(new(-sinPhi * sinDec, -cosPhi, sinPhi * cosDec)),
            Turned(new(cosDec, 0.0, sinDec))
        );

        Vector3D Turned(Vector3D v) =>
            new((v.X * cosRa) - (v.Y * sinRa), (v.X * sinRa) + (v.Y * cosRa), v.Z);
    }

    /// <summary>Sine and cosine of degrees, exact at whole quarters of a turn.</summary>
    private static (double Sin, double Cos) SinCos(double degrees)
    {
        var quarters = Math.Round(degrees / 90.0);
        var (sin, cos) = Math.SinCos((degrees - (90.0 * quarters)) * (Math.PI / 180.0));
        return ((int)(((quarters % 4.0) + 4.0) % 4.0)) switch
        {
            0 => (sin, cos),
            1 => (cos, -sin),
            2 => (-sin, -cos),
            _ => (-cos, sin),
        };
    }
}
