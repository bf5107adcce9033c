using Framing.Sky;

namespace Framing.Fits;

/// <summary>Reads from header cards where a picture lies on the sky.</summary>
/// <remarks>
/// The tangent projection (TAN) is read. Another projection is named and not read; the terms of a distortion are told of
/// and not used. Source: FITS Standard 4.0, section 8; Calabretta and Greisen 2002, A&amp;A 395, 1077.
/// </remarks>
public static class WorldCoordinatesReader
{
    private const double FurthestPixel = 1e9;
    private static readonly string[] SipOrders = ["A_ORDER", "B_ORDER"];

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
        var coordinates = Coordinates(header, axes, warnings, out why);
        if (why is not null)
        {
            warnings.Add(why);
        }

        return new()
        {
            Coordinates = coordinates,
            WhyNone = why,
            Projection = axes.Projection,
            Distortion = Distortion(header, axes, warnings),
            Frame = FrameReader.Read(header, warnings),
            Warnings = warnings,
        };
    }

    private static TanWorldCoordinates? Coordinates(
        FitsHeader header,
        CelestialAxes axes,
        List<string> warnings,
        out string? why
    )
    {
        // TPV is TAN with a distortion of its own (FITS registry), so its linear part is TAN.
        if (axes.Projection is not ("TAN" or "TPV"))
        {
            why = $"The file's projection is {axes.Projection}; only TAN is read yet.";
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
        matrix = Turned(matrix, header, axes, declination, ref why);
        if (why is null && !(matrix.IsUsable && HasSize(matrix)))
        {
            why = FormattableString.Invariant(
                $"The size of a pixel, {matrix.ScaleX.Degrees:g3} by {matrix.ScaleY.Degrees:g3} degrees, is none that a picture has."
            );
        }

        if (why is not null)
        {
            return null;
        }

        return new(
            pixel,
            SkyDirection.FromDegrees(
                Math.IEEERemainder(longitude * units.Longitude, 360.0),
                declination
            ),
            matrix
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

    /// <summary>Folds LONPOLE into the matrix: for a projection about its own pole it is a turn of the plane.</summary>
    /// <remarks>
    /// With native longitude p of the celestial pole, (xi, eta) = (-x cos p - y sin p, x sin p - y cos p), from Paper II
    /// equations 12 to 15 with the native pole at the reference point; p = 180 degrees leaves the plane as it is.
    /// </remarks>
    private static PixelMatrix Turned(
        PixelMatrix matrix,
        FitsHeader header,
        CelestialAxes axes,
        double declination,
        ref string? why
    )
    {
        // PVi_1 to PVi_3 move the fiducial point and the pole, unless they are terms of a distortion.
        var onAxis = FitsHeader.Numbered("PV", axes.Longitude);
        var isPlain = axes.Projection == "TAN" && !HasPvTerms(header);
        foreach (var keyword in (string[])["LONPOLE", $"{onAxis}_1", $"{onAxis}_2", $"{onAxis}_3"])
        {
            if (isPlain && LinearPart.Unreadable(header, keyword))
            {
                why ??= $"{keyword} = {header.Text(keyword)} is no number.";
                return matrix;
            }
        }

        if (
            isPlain
            && (
                (header.Number($"{onAxis}_1") ?? 0.0) != 0.0
                || (header.Number($"{onAxis}_2") ?? 90.0) != 90.0
            )
        )
        {
            why ??=
                $"{onAxis}_1 and {onAxis}_2 move the fiducial point of the projection; that is not read yet.";
            return matrix;
        }

        // Paper II, section 2.2: the default is 0 where the reference point lies as far north as its native latitude, 90.
        var pole =
            (isPlain ? header.Number($"{onAxis}_3") : null)
            ?? header.Number("LONPOLE")
            ?? (declination >= 90.0 ? 0.0 : 180.0);
        if (pole == 180.0)
        {
            return matrix;
        }

        var (sin, cos) = Math.SinCos(Angle.FromDegrees(pole).Radians);
        return new(
            (-matrix.Cd11 * cos) - (matrix.Cd21 * sin),
            (-matrix.Cd12 * cos) - (matrix.Cd22 * sin),
            (matrix.Cd11 * sin) - (matrix.Cd21 * cos),
            (matrix.Cd12 * sin) - (matrix.Cd22 * cos)
        );
    }

    private static DistortionKind Distortion(
        FitsHeader header,
        CelestialAxes axes,
        List<string> warnings
    )
    {
        var hasTerms = Array.Exists(SipOrders, header.Has);
        if (axes.Suffix == "SIP" || hasTerms)
        {
            warnings.Add(
                axes.Suffix != "SIP"
                    ? $"The header has SIP terms (A_ORDER, B_ORDER) but CTYPE ends in {axes.Projection}, not in -SIP; they are not used."
                : hasTerms
                    ? "The SIP terms of the lens distortion are not used yet; places towards the edges are off by what they say."
                : "CTYPE ends in -SIP but there are no SIP terms (A_ORDER, B_ORDER)."
            );
            return DistortionKind.Sip;
        }

        if (axes.Projection == "TPV" || HasPvTerms(header))
        {
            warnings.Add(
                "The PVi_m terms of the lens distortion are not used yet; places towards the edges are off by what they say."
            );
            return DistortionKind.Tpv;
        }

        if (
            axes.Suffix.Length > 0
            || header.Has("CPDIS1")
            || header.Has("CPDIS2")
            || header.Has("CQDIS1")
            || header.Has("CQDIS2")
        )
        {
            warnings.Add(
                axes.Suffix.Length > 0
                    ? $"The distortion {axes.Suffix} (CTYPE) is not used."
                    : "The distortion of CPDISi or CQDISi is not used."
            );
            return DistortionKind.Other;
        }

        return DistortionKind.None;
    }

    /// <summary>True for terms of a polynomial: PV1_0 to PV2_39 that TAN itself does not know.</summary>
    private static bool HasPvTerms(FitsHeader header)
    {
        for (var m = 4; m < 40; m++)
        {
            if (
                header.Has(FormattableString.Invariant($"PV1_{m}"))
                || header.Has(FormattableString.Invariant($"PV2_{m}"))
            )
            {
                return true;
            }
        }

        return header.Has("PV2_0") && header.Has("PV2_1");
    }
}
