namespace Framing.Imaging;

/// <summary>What a frame is, as far as its stars tell.</summary>
public enum StarVerdict
{
    /// <summary>It shows stars.</summary>
    Stars,

    /// <summary>It shows a few points only: thick cloud, too short an exposure, too small a field.</summary>
    TooFewStars,

    /// <summary>It is even all over but for noise: a flat, a dark, a bias, a cap on the lens, or cloud.</summary>
    Even,

    /// <summary>Most of it is as bright as its format allows: daylight, or far too long an exposure.</summary>
    Overexposed,

    /// <summary>It is full of structure that is no stars: a daylight picture.</summary>
    Daylight,

    /// <summary>Its stars are discs: out of focus. Those that were found are given all the same.</summary>
    Defocused,
}
