using Framing.Sky;

namespace Framing.Fits;

/// <summary>Writes world coordinates as header cards.</summary>
/// <remarks>
/// Tangent planes are written, with or without the distortion of the lens (SIP): what a fit to stars gives. Source: FITS
/// Standard 4.0, section 8; the SIP convention, FITS registry.
/// </remarks>
public static class WorldCoordinatesWriter
{
    /// <summary>
    /// Adds the cards of a solution in ICRS: CTYPE, CUNIT, CRPIX, CRVAL, CD, LONPOLE, RADESYS, and of a lens distortion
    /// A_ORDER, A_p_q, B_ORDER, B_p_q, with the reverse terms AP and BP where it has them.
    /// </summary>
    /// <param name="cards">Takes the cards.</param>
    /// <param name="coordinates">The solution, for pixels as FITS counts: a tangent plane, with or without SIP.</param>
    /// <returns>The builder of the cards.</returns>
    /// <exception cref="ArgumentException">It is no tangent plane, or has another distortion.</exception>
    public static FitsHeaderBuilder AddSolution(
        this FitsHeaderBuilder cards,
        WorldCoordinates coordinates
    )
    {
        ArgumentNullException.ThrowIfNull(cards);
        ArgumentNullException.ThrowIfNull(coordinates);
        return Add(cards, coordinates, SipOf(coordinates));
    }

    /// <summary>
    /// Adds the cards of a solution as <see cref="AddSolution(FitsHeaderBuilder, WorldCoordinates)"/> does, always with the
    /// reverse terms AP and BP of a lens distortion: where it has none, they are fitted over the picture.
    /// </summary>
    /// <param name="cards">Takes the cards.</param>
    /// <param name="coordinates">The solution, for pixels as FITS counts: a tangent plane, with or without SIP.</param>
    /// <param name="width">Columns of the picture, 1 or more.</param>
    /// <param name="height">Rows of the picture, 1 or more.</param>
    /// <returns>The builder of the cards.</returns>
    /// <exception cref="ArgumentException">It is no tangent plane, or has another distortion.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The picture has no pixels.</exception>
    /// <remarks>Some readers of the file find pixels by AP and BP alone; this program needs them for nothing.</remarks>
    public static FitsHeaderBuilder AddSolution(
        this FitsHeaderBuilder cards,
        WorldCoordinates coordinates,
        int width,
        int height
    )
    {
        ArgumentNullException.ThrowIfNull(cards);
        ArgumentNullException.ThrowIfNull(coordinates);
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(height, 1);
        var sip = SipOf(coordinates);
        return Add(
            cards,
            coordinates,
            sip is null ? null : ReverseTerms.Of(sip, coordinates.ReferencePixel, width, height)
        );
    }

    private static FitsHeaderBuilder Add(
        FitsHeaderBuilder cards,
        WorldCoordinates coordinates,
        SipDistortion? sip
    )
    {
        var matrix = MatrixOf(coordinates);
        var reference = coordinates.ReferenceDirection;
        var (suffix, with) = sip is null ? ("", "") : ("-SIP", " with lens distortion");
        cards
            .Add("WCSAXES", 2L)
            .Add("CTYPE1", "RA---TAN" + suffix, "right ascension, tangent projection" + with)
            .Add("CTYPE2", "DEC--TAN" + suffix, "declination, tangent projection" + with)
            .Add("CUNIT1", "deg")
            .Add("CUNIT2", "deg")
            .Add("CRPIX1", coordinates.ReferencePixel.X, "pixel of the tangent point")
            .Add("CRPIX2", coordinates.ReferencePixel.Y)
            .Add("CRVAL1", reference.RightAscension.Degrees, "its right ascension, degrees")
            .Add("CRVAL2", reference.Declination.Degrees, "its declination, degrees")
            .Add("CD1_1", matrix.Cd11, "degrees a pixel")
            .Add("CD1_2", matrix.Cd12)
            .Add("CD2_1", matrix.Cd21)
            .Add("CD2_2", matrix.Cd22)
            .Add("LONPOLE", 180.0)
            .Add("RADESYS", "ICRS");
        if (sip is not null)
        {
            SipCards.Add(cards, sip);
        }

        return cards;
    }

    private static SipDistortion? SipOf(WorldCoordinates coordinates) =>
        (coordinates as ProjectedWorldCoordinates)?.Sip;

    private static PixelMatrix MatrixOf(WorldCoordinates coordinates)
    {
        if (coordinates is TanWorldCoordinates tangent)
        {
            return tangent.Matrix;
        }

        return
            coordinates
                is ProjectedWorldCoordinates
                {
                    Projection: "TAN",
                    Tpv: null,
                    Origin: { Xi: 0.0, Eta: 0.0 }
                } projected
            && TangentMatrix.Of(
                projected.ReferenceDirection,
                projected.Sphere,
                projected.PlaneMatrix
            )
                is { } matrix
            ? matrix
            : throw new ArgumentException(
                $"The solution is in {coordinates.Projection} about another point, in another frame or with a distortion that is not SIP; tangent planes (TAN) in ICRS, with or without SIP, are written.",
                nameof(coordinates)
            );
    }
}
