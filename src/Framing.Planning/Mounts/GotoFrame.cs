namespace Framing.Planning;

/// <summary>The frame of the coordinates that a hand control expects.</summary>
public enum GotoFrame
{
    /// <summary>True equator and equinox of date.</summary>
    OfDate = 0,

    /// <summary>ICRS, mean equator and equinox of J2000.</summary>
    J2000 = 1,
}
