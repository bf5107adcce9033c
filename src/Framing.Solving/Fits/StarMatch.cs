using Framing.Sky;

namespace Framing.Solving;

/// <summary>A star of a frame and the star of a catalogue that it is taken for.</summary>
/// <param name="Position">Its place in the frame, as FITS counts.</param>
/// <param name="Direction">Its place on the sky at the date of the frame, ICRS.</param>
public readonly record struct StarMatch(PixelPosition Position, SkyDirection Direction);
