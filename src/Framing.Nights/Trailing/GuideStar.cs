namespace Framing.Nights;

/// <summary>Where the guide star stands on the imaging sensor.</summary>
public enum GuideStar
{
    /// <summary>In the middle; <c>centre</c> in a plan.</summary>
    Centre = 0,

    /// <summary>In a corner, where field rotation trails the far corner most; <c>corner</c> in a plan.</summary>
    Corner = 1,
}
