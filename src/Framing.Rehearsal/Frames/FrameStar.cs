using Framing.Sky;

namespace Framing.Rehearsal;

/// <summary>A star of a made frame.</summary>
/// <param name="Position">The middle of its light, as FITS counts and the file's axes run.</param>
/// <param name="Direction">Its place at the frame's date, ICRS.</param>
/// <param name="VMagnitude">V.</param>
/// <param name="Electrons">The electrons it gave, clouds and vignetting counted.</param>
/// <param name="IsReal">True for a star of the catalogue, false for one that is made up.</param>
/// <param name="IsSaturated">True where its brightest pixel is full.</param>
public readonly record struct FrameStar(
    PixelPosition Position,
    SkyDirection Direction,
    double VMagnitude,
    double Electrons,
    bool IsReal,
    bool IsSaturated
);
