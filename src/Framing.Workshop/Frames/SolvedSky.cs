using Framing.Imaging;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>Where a frame looks, and how well that is known.</summary>
/// <param name="Facts">Where it looks.</param>
/// <param name="CentreSigma">One standard deviation of its middle along each axis.</param>
/// <param name="TurnSigma">One standard deviation of its position angle.</param>
internal sealed record SolvedSky(SkyFacts Facts, Angle CentreSigma, Angle TurnSigma);
