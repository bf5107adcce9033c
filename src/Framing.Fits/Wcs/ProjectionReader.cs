using Framing.Sky;

namespace Framing.Fits;

/// <summary>Reads the map projection and how its native sphere lies on the sky: PVi_m, LONPOLE, LATPOLE.</summary>
/// <remarks>Source: Calabretta and Greisen 2002, A&amp;A 395, 1077, sections 2.2 to 2.5 and table 13.</remarks>
internal sealed record ProjectionReader(FitsHeader Header, CelestialAxes Axes, bool IsTpv)
{
    /// <summary>Reads the projection.</summary>
    /// <param name="why">Why there is none.</param>
    public SkyProjection? Projection(ref string? why)
    {
        // TPV is TAN with a distortion of its own (FITS registry).
        var code = IsTpv ? "TAN" : Axes.Projection;
        if (!SkyProjection.Codes.Contains(code, StringComparer.Ordinal))
        {
            why ??=
                $"The file's projection is {code}; {string.Join(", ", SkyProjection.Codes)} are read.";
            return null;
        }

        var parameters = code is "SIN" or "CEA";
        var first =
            (parameters ? Number(Axes.Latitude, 1, ref why) : null) ?? (code == "CEA" ? 1.0 : 0.0);
        var second = (code == "SIN" ? Number(Axes.Latitude, 2, ref why) : null) ?? 0.0;
        var projection = why is null ? SkyProjection.Find(code, first, second) : null;
        if (projection is null)
        {
            why ??= FormattableString.Invariant(
                $"PV{Axes.Latitude}_1 = {first}: more than 0 and at most 1 would be right for CEA."
            );
        }

        return projection;
    }

    /// <summary>Reads how the native sphere lies on the sky.</summary>
    /// <param name="projection">The projection.</param>
    /// <param name="longitude">CRVAL of the longitude axis, degrees.</param>
    /// <param name="latitude">CRVAL of the latitude axis, degrees.</param>
    /// <param name="origin">Receives the point of the plane that PVi_0 makes the origin; else 0, 0.</param>
    /// <param name="why">Why there is none.</param>
    public NativeSphere? Sphere(
        SkyProjection projection,
        double longitude,
        double latitude,
        out PlanePoint origin,
        ref string? why
    )
    {
        origin = default;
        var phi = Own(1, ref why) ?? 0.0;
        var usual = projection.IsZenithal ? 90.0 : 0.0;
        var theta = Own(2, ref why) ?? usual;
        var pole = Own(3, ref why) ?? Number("LONPOLE", ref why);
        var latitudeOfPole = Own(4, ref why) ?? Number("LATPOLE", ref why);
        var moved = (Own(0, ref why) ?? 0.0) != 0.0;
        if (why is not null)
        {
            return null;
        }

        if (Math.Abs(theta) > 90.0)
        {
            why = FormattableString.Invariant(
                $"PV{Axes.Longitude}_2 = {theta} is no latitude; it lies between -90 and +90 degrees."
            );
            return null;
        }

        if (
            !NativeSphere.TryFind(
                longitude,
                latitude,
                phi,
                theta,
                pole,
                latitudeOfPole,
                out var sphere
            )
        )
        {
            why = FormattableString.Invariant(
                $"LONPOLE, LATPOLE and CRVAL{Axes.Latitude} = {latitude} contradict each other: no projection has them."
            );
            return null;
        }

        if (moved && (phi != 0.0 || theta != usual))
        {
            var failure = projection.ToPlane(Unit(phi, theta), out var x, out var y);
            if (failure != MapFailure.None)
            {
                why = FormattableString.Invariant(
                    $"PV{Axes.Longitude}_1 and PV{Axes.Longitude}_2 name a fiducial point that {projection.Code} does not show."
                );
                return null;
            }

            origin = new(x, y);
        }

        return sphere;
    }

    /// <summary>A PV card of the longitude axis, which under TPV is a term of the distortion.</summary>
    private double? Own(int m, ref string? why) =>
        IsTpv ? null : Number(Axes.Longitude, m, ref why);

    private double? Number(int axis, int m, ref string? why) =>
        Number(FormattableString.Invariant($"PV{axis}_{m}"), ref why);

    private double? Number(string keyword, ref string? why)
    {
        if (LinearPart.Unreadable(Header, keyword))
        {
            why ??= $"{keyword} = {Header.Text(keyword)} is no number.";
            return null;
        }

        return Header.Number(keyword);
    }

    private static Vector3D Unit(double longitude, double latitude)
    {
        var direction = SkyDirection.FromDegrees(Math.IEEERemainder(longitude, 360.0), latitude);
        return direction.Vector;
    }
}
