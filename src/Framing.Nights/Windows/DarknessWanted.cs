namespace Framing.Nights;

/// <summary>How far the Sun has to be below the horizon before subs are shot.</summary>
public enum DarknessWanted
{
    /// <summary>The Sun's centre below -18°.</summary>
    Astronomical = 0,

    /// <summary>The Sun's centre below -12°.</summary>
    Nautical = 1,

    /// <summary>The Sun's centre below -6°.</summary>
    Civil = 2,
}
