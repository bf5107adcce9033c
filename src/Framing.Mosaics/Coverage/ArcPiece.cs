using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>A piece of a figure's side over which the number of other figures stays the same.</summary>
/// <param name="Side">The side; the figure lies to its left.</param>
/// <param name="From">Where the piece starts, a unit vector.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Over">How many other figures of the first kind cover it.</param>
/// <param name="OverSecond">How many other figures of the second kind cover it.</param>
internal readonly record struct ArcPiece(
    int Side,
    Vector3D From,
    Vector3D To,
    int Over,
    int OverSecond
);
