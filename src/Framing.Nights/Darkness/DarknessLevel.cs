namespace Framing.Nights;

/// <summary>How dark a night becomes, by the lowest altitude of the Sun's centre.</summary>
public enum DarknessLevel
{
    /// <summary>The Sun does not set: it stays above -0.833°.</summary>
    MidnightSun,

    /// <summary>The Sun sets, but stays above -6°: bright all night.</summary>
    CivilTwilight,

    /// <summary>The Sun stays above -12°.</summary>
    NauticalTwilight,

    /// <summary>The Sun stays above -18°: no astronomical darkness.</summary>
    AstronomicalTwilight,

    /// <summary>The Sun goes below -18°, but by no more than 0.1°: what is left of the night hangs on hundredths of a degree.</summary>
    BarelyDark,

    /// <summary>The Sun goes below -18.1°.</summary>
    Dark,
}
