using Framing.Sky;

namespace Framing.Rehearsal;

/// <summary>The sky and its weather as the frame maker plays them.</summary>
public sealed record SkyModel
{
    /// <summary>Full width at half maximum that the air gives to a star, arcseconds.</summary>
    public double SeeingArcsec { get; init; } = 3.0;

    /// <summary>Brightness of the empty sky, magnitudes (V) per square arcsecond.</summary>
    public double BrightnessMagArcsec2 { get; init; } = 21.3;

    /// <summary>How much brighter the sky is at one edge than in the middle, as a share.</summary>
    public double Gradient { get; init; } = 0.1;

    /// <summary>Towards where it grows brighter, from the file's +x towards its +y.</summary>
    public Angle GradientDirection { get; init; } = Angle.FromDegrees(-90);

    /// <summary>Clouds: 0 none, 1 the thickest of them let nothing through.</summary>
    public double Clouds { get; init; }

    /// <summary>Satellites that cross the frame.</summary>
    public int Satellites { get; init; }

    /// <summary>Glowing nebulae.</summary>
    public IReadOnlyList<NebulaGlow> Nebulae { get; init; } = [];

    /// <summary>True to fill up with stars that are made up where the catalogue ends, as many as the real sky has.</summary>
    public bool FaintStars { get; init; } = true;
}
