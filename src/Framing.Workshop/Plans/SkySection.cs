using Framing.Sky;

namespace Framing.Workshop;

/// <summary>What the sky is like: [sky].</summary>
/// <param name="Seeing">Full width at half maximum of a star's disc.</param>
/// <param name="MagnitudePerArcsec2">Brightness of the sky in magnitudes per square arcsecond, 10 to 23.</param>
public sealed record SkySection(Angle Seeing, double MagnitudePerArcsec2);
