namespace Framing.Fits;

/// <summary>The frame in which a header states sky positions.</summary>
/// <param name="Name">ICRS, FK5, FK4, FK4-NO-E, GAPPT, or what the file says.</param>
/// <param name="Equinox">The equinox in years (Julian for FK5, Besselian for FK4), or null where the frame has none.</param>
/// <remarks>Source: FITS Standard 4.0, section 8.3, with its defaults.</remarks>
public sealed record FrameOfReference(string Name, double? Equinox)
{
    /// <summary>ICRS.</summary>
    public static FrameOfReference Icrs { get; } = new("ICRS", null);

    /// <summary>True when positions may be taken for ICRS: ICRS itself, and FK5 of 2000, which agrees within 0.1 arcsec.</summary>
    public bool IsLikeIcrs => Name == "ICRS" || (Name == "FK5" && Equinox == 2000.0);

    /// <summary>"ICRS", or "FK5, equinox 2026.4".</summary>
    public override string ToString() =>
        Equinox is { } equinox ? FormattableString.Invariant($"{Name}, equinox {equinox}") : Name;
}
