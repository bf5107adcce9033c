using Framing.Sky;

namespace Framing.Fits;

/// <summary>Writes world coordinates as header cards.</summary>
public static class WorldCoordinatesWriter
{
    /// <summary>Adds the cards of a solution in ICRS: CTYPE, CUNIT, CRPIX, CRVAL, CD, LONPOLE, RADESYS.</summary>
    /// <param name="cards">Takes the cards.</param>
    /// <param name="coordinates">The solution, for pixels as FITS counts.</param>
    /// <returns>The builder of the cards.</returns>
    public static FitsHeaderBuilder AddSolution(
        this FitsHeaderBuilder cards,
        TanWorldCoordinates coordinates
    )
    {
        ArgumentNullException.ThrowIfNull(cards);
        ArgumentNullException.ThrowIfNull(coordinates);
        var reference = coordinates.ReferenceDirection;
        var matrix = coordinates.Matrix;
        return cards
            .Add("WCSAXES", 2L)
            .Add("CTYPE1", "RA---TAN", "right ascension, tangent projection")
            .Add("CTYPE2", "DEC--TAN", "declination, tangent projection")
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
    }
}
