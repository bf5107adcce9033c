namespace Framing.Fits;

/// <summary>Which of the picture's two axes is right ascension and which declination, by CTYPE.</summary>
/// <param name="Longitude">1 or 2: the axis of right ascension.</param>
/// <param name="Latitude">The other one.</param>
/// <param name="Projection">The code of the projection, "TAN".</param>
/// <param name="Suffix">What stands behind it, "SIP", or empty.</param>
internal sealed record CelestialAxes(int Longitude, int Latitude, string Projection, string Suffix)
{
    /// <summary>Reads the axes.</summary>
    /// <param name="header">The header.</param>
    /// <param name="why">Why there are none; null when the header does not speak of the sky at all.</param>
    /// <returns>The axes, or null.</returns>
    public static CelestialAxes? Read(FitsHeader header, out string? why)
    {
        why = null;
        var first = TypeOf(header, 1);
        var second = TypeOf(header, 2);
        if (first.Length == 0 && second.Length == 0)
        {
            return null;
        }

        var (coordinate1, projection1, suffix1) = Split(first);
        var (coordinate2, projection2, suffix2) = Split(second);
        var swapped = coordinate1 == "DEC" && coordinate2 == "RA";
        if (!swapped && !(coordinate1 == "RA" && coordinate2 == "DEC"))
        {
            why =
                $"CTYPE1 = {first} and CTYPE2 = {second}: only right ascension and declination are read (RA---TAN with DEC--TAN).";
            return null;
        }

        if (projection1 != projection2 || suffix1 != suffix2 || projection1.Length == 0)
        {
            why =
                $"CTYPE1 = {first} and CTYPE2 = {second} do not name one projection for both axes.";
            return null;
        }

        return new(swapped ? 2 : 1, swapped ? 1 : 2, projection1, suffix1);
    }

    private static string TypeOf(FitsHeader header, int axis) =>
        header.Text(FitsHeader.Numbered("CTYPE", axis))?.Trim() ?? string.Empty;

    /// <summary>"RA---TAN-SIP" is RA, TAN, SIP: four characters, a hyphen, three characters (section 8.2).</summary>
    private static (string Coordinate, string Projection, string Suffix) Split(string type)
    {
        var upper = type.ToUpperInvariant();
        return upper.Length < 8 || upper[4] != '-'
            ? (upper, string.Empty, string.Empty)
            : (
                upper[..4].TrimEnd('-'),
                upper[5..8].TrimEnd(),
                upper.Length > 9 && upper[8] == '-' ? upper[9..].TrimEnd() : string.Empty
            );
    }
}
