namespace Framing.Workshop;

/// <summary>How far the Sun has to be down before shooting starts.</summary>
public enum Darkness
{
    /// <summary>18° below the horizon; <c>astronomical</c> in a plan.</summary>
    Astronomical = 0,

    /// <summary>12° below the horizon; <c>nautical</c> in a plan.</summary>
    Nautical = 1,

    /// <summary>6° below the horizon; <c>civil</c> in a plan.</summary>
    Civil = 2,
}
