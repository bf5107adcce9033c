using Framing.Sky;

namespace Framing.Fits;

/// <summary>Reads the matrix from pixels to degrees of the plane: CD, or PC with CDELT, or CDELT with CROTA.</summary>
/// <remarks>
/// Source: FITS Standard 4.0, section 8.2; Calabretta and Greisen 2002, A&amp;A 395, 1077, section 6.1 for CROTA. Rows of
/// the matrix are right ascension and declination, columns the picture's axes 1 and 2, also where declination comes first.
/// </remarks>
internal static class LinearPart
{
    /// <summary>Reads the matrix.</summary>
    /// <param name="header">The header.</param>
    /// <param name="axes">Which axis is which.</param>
    /// <param name="warnings">Takes what is odd.</param>
    /// <param name="why">Why there is none.</param>
    /// <returns>The matrix in the file's units a pixel, or null.</returns>
    public static PixelMatrix? Read(
        FitsHeader header,
        CelestialAxes axes,
        ICollection<string> warnings,
        out string? why
    )
    {
        var hasCd = HasAny(header, "CD");
        var hasPc = HasAny(header, "PC");
        var rotation = FitsHeader.Numbered("CROTA", axes.Latitude);
        if (hasCd && hasPc)
        {
            warnings.Add("CDi_j and PCi_j stand side by side; CDi_j is used.");
        }

        var keywords = hasCd
            ? Elements("CD")
            : [.. hasPc ? Elements("PC") : [rotation], "CDELT1", "CDELT2"];
        foreach (var keyword in keywords)
        {
            if (Unreadable(header, keyword))
            {
                why = $"{keyword} = {header.Text(keyword)} is no number.";
                return null;
            }
        }

        PixelMatrix matrix;
        if (hasCd)
        {
            matrix = ByAxes(axes, (i, j) => Element(header, "CD", i, j) ?? 0.0);
        }
        else if (
            header.Number("CDELT1") is not { } delta1
            || header.Number("CDELT2") is not { } delta2
        )
        {
            why = "The header gives no size of a pixel (CDi_j, or CDELT1 and CDELT2).";
            return null;
        }
        else if (hasPc || header.Number(rotation) is not { } crota)
        {
            matrix = ByAxes(
                axes,
                (i, j) =>
                    (i == 1 ? delta1 : delta2)
                    * (Element(header, "PC", i, j) ?? (i == j ? 1.0 : 0.0))
            );
        }
        else
        {
            matrix = Rotated(axes, delta1, delta2, crota);
        }

        why =
            matrix.IsUsable ? null
            : hasCd
                ? "The CD matrix is singular (CD1_1, CD1_2, CD2_1, CD2_2): it maps the picture onto a line or a point."
            : "The matrix of CDELT1, CDELT2 and the rotation is singular: it maps the picture onto a line or a point.";
        return why is null ? matrix : null;
    }

    private static PixelMatrix Rotated(
        CelestialAxes axes,
        double delta1,
        double delta2,
        double rotation
    )
    {
        if (axes.Longitude == 1)
        {
            return PixelMatrix.FromRotation(delta1, delta2, Angle.FromDegrees(rotation));
        }

        // Declination first: the same formula with the axes' parts exchanged.
        var exchanged = PixelMatrix.FromRotation(delta2, delta1, Angle.FromDegrees(rotation));
        return new(exchanged.Cd12, exchanged.Cd11, exchanged.Cd22, exchanged.Cd21);
    }

    private static PixelMatrix ByAxes(CelestialAxes axes, Func<int, int, double> element) =>
        new(
            element(axes.Longitude, 1),
            element(axes.Longitude, 2),
            element(axes.Latitude, 1),
            element(axes.Latitude, 2)
        );

    private static bool HasAny(FitsHeader header, string name) =>
        Array.Exists(Elements(name), header.Has);

    private static string[] Elements(string name) =>
        [$"{name}1_1", $"{name}1_2", $"{name}2_1", $"{name}2_2"];

    private static double? Element(FitsHeader header, string name, int i, int j) =>
        header.Number(FormattableString.Invariant($"{name}{i}_{j}"));

    /// <summary>True when a keyword stands there with a value that is no number; an undefined value is as good as none.</summary>
    public static bool Unreadable(FitsHeader header, string keyword) =>
        header.Find(keyword) is { Value: { Kind: not FitsValueKind.Undefined, Number: null } };
}
