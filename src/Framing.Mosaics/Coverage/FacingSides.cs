using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Measures how two neighbouring panels face each other, in the plane of one of them.</summary>
/// <remarks>
/// The neighbour's side is a slanting line in that plane. The depth at a place along the side is from that line to the
/// panel's own side: positive where the neighbour reaches in, negative where a gap opens. It changes evenly along the
/// side, so its ends say all.
/// </remarks>
internal readonly record struct FacingSides
{
    /// <summary>Depths at both ends of the length on which the sides face each other; null when they do not.</summary>
    public (double Low, double High)? Depth { get; private init; }

    /// <summary>Corners of the gap that opens between the sides; empty where none does.</summary>
    public IReadOnlyList<SkyDirection> Gap { get; private init; }

    /// <summary>Looks from one panel at the facing side of its neighbour.</summary>
    /// <param name="pose">The panel looked from.</param>
    /// <param name="towards">Position angle of the neighbour in the grid, at the panel.</param>
    /// <param name="halfDepth">Half of the panel's size towards the neighbour, a tangent.</param>
    /// <param name="halfSide">Half of the length of the panel's side there, a tangent.</param>
    /// <param name="from">One corner of the neighbour's facing side.</param>
    /// <param name="to">The other corner.</param>
    public static FacingSides Look(
        CameraPose pose,
        PositionAngle towards,
        double halfDepth,
        double halfSide,
        SkyDirection from,
        SkyDirection to
    )
    {
        var plane = new TangentPlane(pose.Centre);
        if (!plane.TryProject(from, out var start) || !plane.TryProject(to, out var end))
        {
            // A quarter of the sky away: it faces nothing.
            return new() { Gap = [] };
        }

        var (sin, cos) = Math.SinCos(towards.Radians);
        var (out1, side1) = Split(start);
        var (out2, side2) = Split(end);
        var low = Math.Max(-halfSide, Math.Min(side1, side2));
        var high = Math.Min(halfSide, Math.Max(side1, side2));
        if (high <= low)
        {
            return new() { Gap = [] };
        }

        var (atLow, atHigh) = (DepthAt(low), DepthAt(high));
        return new() { Depth = (atLow, atHigh), Gap = GapBetween() };

        (double Out, double Side) Split(PlanePoint p) =>
            ((p.Xi * sin) + (p.Eta * cos), (p.Xi * cos) - (p.Eta * sin));

        double DepthAt(double side) =>
            halfDepth - (out1 + ((out2 - out1) * (side - side1) / (side2 - side1)));

        SkyDirection Place(double outward, double side) =>
            plane.Unproject(new((outward * sin) + (side * cos), (outward * cos) - (side * sin)));

        IReadOnlyList<SkyDirection> GapBetween()
        {
            if (atLow >= 0.0 && atHigh >= 0.0)
            {
                return [];
            }

            if (atLow < 0.0 && atHigh < 0.0)
            {
                return
                [
                    Place(halfDepth, low),
                    Place(halfDepth - atLow, low),
                    Place(halfDepth - atHigh, high),
                    Place(halfDepth, high),
                ];
            }

            // The sides cross: a wedge from the crossing to the open end.
            var crossing = low + ((high - low) * atLow / (atLow - atHigh));
            var (open, depth) = atLow < 0.0 ? (low, atLow) : (high, atHigh);
            return
            [
                Place(halfDepth, crossing),
                Place(halfDepth, open),
                Place(halfDepth - depth, open),
            ];
        }
    }

    /// <summary>A depth in the plane as the angle it spans on the sky at the rim of the panel.</summary>
    public static Angle AtRim(double halfDepth, double depth) =>
        Angle.FromRadians(Math.Atan(halfDepth) - Math.Atan(halfDepth - depth));
}
