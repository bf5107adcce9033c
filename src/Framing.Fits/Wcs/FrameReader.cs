namespace Framing.Fits;

/// <summary>Reads the frame of reference from RADESYS and EQUINOX, and from their older names RADECSYS and EPOCH.</summary>
internal static class FrameReader
{
    public static FrameOfReference Read(FitsHeader header, ICollection<string> warnings)
    {
        var name = (header.Text("RADESYS") ?? header.Text("RADECSYS"))?.Trim().ToUpperInvariant();
        var equinox =
            header.Number("EQUINOX") ?? Named(header.Text("EQUINOX")) ?? header.Number("EPOCH");
        if (string.IsNullOrEmpty(name))
        {
            // The defaults of section 8.3: no equinox is ICRS, before 1984 FK4, from then on FK5.
            name =
                equinox is null ? "ICRS"
                : equinox < 1984.0 ? "FK4"
                : "FK5";
        }

        var frame = name switch
        {
            "ICRS" => FrameOfReference.Icrs,
            "FK5" => new(name, equinox ?? 2000.0),
            "FK4" or "FK4-NO-E" => new(name, equinox ?? 1950.0),
            _ => new FrameOfReference(name, equinox),
        };
        if (!frame.IsLikeIcrs)
        {
            warnings.Add(
                $"The file states positions in {frame} (RADESYS, EQUINOX); they are given as written, not carried to J2000."
            );
        }

        return frame;
    }

    /// <summary>The equinox written as J2000.0 or B1950.0, or null.</summary>
    private static double? Named(string? text) =>
        text?.Length > 1 && text[0] is 'J' or 'B' ? FitsValue.ParseNumber(text[1..]) : null;
}
