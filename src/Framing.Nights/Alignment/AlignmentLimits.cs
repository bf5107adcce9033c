using Framing.Sky;

namespace Framing.Nights;

/// <summary>Where a star for aligning may stand: common practice where nothing else is said.</summary>
public sealed record AlignmentLimits
{
    /// <summary>The least apparent altitude: below it the air lifts and blurs too much.</summary>
    public Angle Lowest { get; init; } = Angle.FromDegrees(25.0);

    /// <summary>The greatest apparent altitude: close to the zenith the azimuth runs away.</summary>
    public Angle Highest { get; init; } = Angle.FromDegrees(70.0);

    /// <summary>By how much it clears the skyline at least.</summary>
    public Angle OverSkyline { get; init; } = Angle.FromDegrees(3.0);

    /// <summary>How far from the equator it may stand: close to a pole right ascension is set badly.</summary>
    public Angle FarthestDeclination { get; init; } = Angle.FromDegrees(70.0);

    /// <summary>The faintest magnitude: what is found in twilight without doubt.</summary>
    public double Faintest { get; init; } = 2.6;
}
