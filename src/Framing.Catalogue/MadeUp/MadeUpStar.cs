using Framing.Sky;

namespace Framing.Catalogue;

/// <summary>A star that does not exist: it stands where real ones of its brightness are too many to be listed.</summary>
/// <param name="Direction">Its place, ICRS.</param>
/// <param name="VMagnitude">Magnitude in Johnson's V, to 0.01.</param>
/// <param name="BMinusV">Colour index B-V, in magnitudes.</param>
/// <remarks>It has no name, no number and no motion, and whoever draws it says that it is made up.</remarks>
public readonly record struct MadeUpStar(SkyDirection Direction, double VMagnitude, double BMinusV);
