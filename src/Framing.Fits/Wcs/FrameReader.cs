using Framing.Sky;

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

        switch (name)
        {
            case "ICRS":
                return FrameOfReference.Icrs;
            case "FK5":
                return new(name, equinox ?? 2000.0);
            case "FK4" or "FK4-NO-E":
                return new(name, equinox ?? 1950.0);
            case "GAPPT":
                return new(name, equinox);
            default:
                var taken = equinox < 1984.0 ? "FK4" : "FK5";
                warnings.Add(
                    FormattableString.Invariant(
                        $"RADESYS = {name} is no frame that is known; {taken} of {equinox ?? 2000.0} is taken."
                    )
                );
                return new(taken, equinox ?? 2000.0);
        }
    }

    /// <summary>The frame as one that can be carried to ICRS.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="header">The header, for the date of the observation, on which FK4 depends.</param>
    /// <param name="why">Why it cannot.</param>
    public static EquatorialFrame? Equatorial(
        FrameOfReference frame,
        FitsHeader header,
        ref string? why
    )
    {
        if (frame.Name == "ICRS")
        {
            return EquatorialFrame.Icrs;
        }

        if (frame.Name == "GAPPT")
        {
            why ??=
                "RADESYS = GAPPT, the apparent place of a moment, is not carried to ICRS (J2000); ICRS, FK5 and FK4 are read.";
            return null;
        }

        var equinox = frame.Equinox!.Value;
        if (!(equinox is >= 1500.0 and <= 2500.0))
        {
            why ??= FormattableString.Invariant(
                $"EQUINOX = {equinox} is no equinox; years from 1500 to 2500 are read."
            );
            return null;
        }

        return frame.Name == "FK5"
            ? EquatorialFrame.Fk5(equinox)
            : EquatorialFrame.Fk4(equinox, Epoch(header) ?? equinox, frame.Name == "FK4");
    }

    /// <summary>The Besselian year of the observation, or null.</summary>
    private static double? Epoch(FitsHeader header)
    {
        // Besselian year 1900.0 is 1899-12-31T19:31:28, a year 365.242198781 days (Lieske 1979, A&A 73, 282).
        var zero = new DateTimeOffset(1899, 12, 31, 19, 31, 28, TimeSpan.Zero);
        return ObservationTime.Start(header, []) is { Year: > 1800 } start
            ? 1900.0 + ((start - zero).TotalDays / 365.242198781)
            : null;
    }

    /// <summary>The equinox written as J2000.0 or B1950.0, or null.</summary>
    private static double? Named(string? text) =>
        text?.Length > 1 && text[0] is 'J' or 'B' ? FitsValue.ParseNumber(text[1..]) : null;
}
