using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>One connected piece of sky, bounded by great-circle arcs, possibly with holes.</summary>
/// <param name="Outer">The outer border in order; the last corner joins the first.</param>
/// <param name="Holes">The borders of the holes, in the same way; most regions have none.</param>
/// <param name="Area">The area, holes taken off.</param>
public sealed record SkyRegion(
    IReadOnlyList<SkyDirection> Outer,
    IReadOnlyList<IReadOnlyList<SkyDirection>> Holes,
    SolidAngle Area
);
