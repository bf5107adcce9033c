using Framing.Sky;

namespace Framing.Fits;

/// <summary>Reads from header cards where a picture lies on the sky.</summary>
/// <remarks>
/// TAN, STG, SIN, ARC, ZEA, CEA, CAR, MER and AIT are read, with SIP and TPV, in ICRS, FK5 and FK4; what is not read is named.
/// Source: FITS Standard 4.0, section 8; Calabretta and Greisen 2002, A&amp;A 395, 1077.
/// </remarks>
public static class WorldCoordinatesReader
{
    private const double FurthestPixel = 1e9;

    /// <summary>Reads the solution of a header.</summary>
    /// <param name="header">The cards of the picture's unit.</param>
    /// <returns>The solution, or why there is none.</returns>
    public static HeaderSolution Read(FitsHeader header)
    {
        ArgumentNullException.ThrowIfNull(header);
        var axes = CelestialAxes.Read(header, out var why);
        if (axes is null)
        {
            return why is null
                ? new() { WhyNone = "The header holds no solution (no CTYPE1 and CTYPE2)." }
                : new() { WhyNone = why, Warnings = [why] };
        }

        var warnings = new List<string>();
        var asWritten = Coordinates(header, axes, warnings, out var used, out why);
        var frame = FrameReader.Read(header, warnings);
        var coordinates = asWritten;
        if (asWritten is not null)
        {
            coordinates = FrameReader.Equatorial(frame, header, ref why)?.ToIcrs(asWritten);
            if (!frame.IsLikeIcrs && coordinates is not null)
            {
                warnings.Add(
                    $"The file states positions in {frame} (RADESYS, EQUINOX); they are carried to ICRS (J2000)."
                );
            }
        }

        if (why is not null)
        {
            warnings.Add(why);
        }

        return new()
        {
            Coordinates = coordinates,
            AsWritten = asWritten,
            WhyNone = why,
            Projection = axes.Projection,
            Distortion = DistortionReader.Kind(header, axes),
            DistortionUsed = used,
            Frame = frame,
            Warnings = warnings,
        };
    }

    private static WorldCoordinates? Coordinates(
        FitsHeader header,
        CelestialAxes axes,
        List<string> warnings,
        out bool distortionUsed,
        out string? why
    )
    {
        distortionUsed = false;
        why = null;
        var isTpv = DistortionReader.IsTpv(header, axes);
        var reader = new ProjectionReader(header, axes, isTpv);
        if (reader.Projection(ref why) is not { } projection)
        {
            return null;
        }

        if (LinearPart.Read(header, axes, warnings, out why) is not { } matrix)
        {
            return null;
        }

        var longitude = Reference(header, axes.Longitude, ref why);
        var latitude = Reference(header, axes.Latitude, ref why);
        var units = Units(header, axes, ref why);
        var pixel = ReferencePixel(header, warnings, ref why);
        if (why is not null)
        {
            return null;
        }

        var declination = latitude * units.Latitude;
        if (Math.Abs(declination) > 90.0)
        {
            why = FormattableString.Invariant(
                $"CRVAL{axes.Latitude} = {latitude} is no declination; it lies between -90 and +90 degrees."
            );
            return null;
        }

        matrix = new(
            matrix.Cd11 * units.Longitude,
            matrix.Cd12 * units.Longitude,
            matrix.Cd21 * units.Latitude,
            matrix.Cd22 * units.Latitude
        );
        if (!(matrix.IsUsable && HasSize(matrix)))
        {
            why = FormattableString.Invariant(
                $"The size of a pixel, {matrix.ScaleX.Degrees:g3} by {matrix.ScaleY.Degrees:g3} degrees, is none that a picture has."
            );
            return null;
        }

        var rightAscension = Math.IEEERemainder(longitude * units.Longitude, 360.0);
        var direction = SkyDirection.FromDegrees(rightAscension, declination);
        var sphere = reader.Sphere(
            projection,
            rightAscension,
            declination,
            out var origin,
            ref why
        );
        var sip = DistortionReader.Sip(header, axes, warnings, ref why);
        var tpv = DistortionReader.Tpv(header, axes, ref why);
        if (why is not null)
        {
            return null;
        }

        distortionUsed = sip is not null || tpv is not null;
        return
            !distortionUsed
            && projection.Code == "TAN"
            && TangentMatrix.Of(direction, sphere!.Value, matrix) is { } turned
            ? new TanWorldCoordinates(pixel, direction, turned)
            : new ProjectedWorldCoordinates(
                pixel,
                direction,
                matrix,
                projection,
                sphere!.Value,
                sip,
                tpv,
                origin
            );
    }

    /// <summary>A pixel of 4e-9 arcsec to 90 degrees: sums and inverses stay far from the ends of the number range.</summary>
    private static bool HasSize(PixelMatrix matrix) =>
        matrix.ScaleX.Degrees is >= 1e-12 and <= 90.0
        && matrix.ScaleY.Degrees is >= 1e-12 and <= 90.0;

    private static double Reference(FitsHeader header, int axis, ref string? why)
    {
        var keyword = FitsHeader.Numbered("CRVAL", axis);
        if (header.Number(keyword) is { } value)
        {
            return value;
        }

        // The standard's default of 0 would put the picture on a place nobody meant.
        why ??= header.Has(keyword)
            ? $"{keyword} = {header.Text(keyword)} is no number."
            : $"{keyword} is missing.";
        return 0.0;
    }

    private static PixelPosition ReferencePixel(
        FitsHeader header,
        List<string> warnings,
        ref string? why
    )
    {
        Span<double> pixel = stackalloc double[2];
        for (var axis = 1; axis <= 2; axis++)
        {
            var keyword = FitsHeader.Numbered("CRPIX", axis);
            if (header.Number(keyword) is { } value)
            {
                pixel[axis - 1] = value;
                if (Math.Abs(value) > FurthestPixel)
                {
                    why ??= FormattableString.Invariant(
                        $"{keyword} = {value} lies more than {FurthestPixel} pixels away."
                    );
                }
            }
            else if (LinearPart.Unreadable(header, keyword))
            {
                why ??= $"{keyword} = {header.Text(keyword)} is no number.";
            }
            else
            {
                warnings.Add($"{keyword} is missing; the standard's 0 is taken.");
            }
        }

        return new(pixel[0], pixel[1]);
    }

    /// <summary>Degrees in the units of both axes.</summary>
    private static (double Longitude, double Latitude) Units(
        FitsHeader header,
        CelestialAxes axes,
        ref string? why
    ) => (Unit(header, axes.Longitude, ref why), Unit(header, axes.Latitude, ref why));

    private static double Unit(FitsHeader header, int axis, ref string? why)
    {
        var keyword = FitsHeader.Numbered("CUNIT", axis);
        switch (header.Text(keyword)?.Trim().ToUpperInvariant())
        {
            case null or "" or "DEG" or "DEGREE" or "DEGREES":
                return 1.0;
            case "ARCMIN":
                return 1.0 / 60.0;
            case "ARCSEC":
                return 1.0 / 3600.0;
            case "MAS":
                return 1.0 / 3_600_000.0;
            case "RAD":
                return 180.0 / Math.PI;
            default:
                why ??=
                    $"{keyword} = {header.Text(keyword)} is no unit of angle that is read; deg would be right.";
                return 1.0;
        }
    }
}
