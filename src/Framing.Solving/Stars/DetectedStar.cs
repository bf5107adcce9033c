using Framing.Sky;

namespace Framing.Solving;

/// <summary>A star found in a frame.</summary>
/// <param name="Position">Where its light is centred, as FITS counts and as the file stores its rows.</param>
/// <param name="Flux">Its light above the sky, in any unit that is the same for all stars of the frame; more is brighter.</param>
public readonly record struct DetectedStar(PixelPosition Position, double Flux);
