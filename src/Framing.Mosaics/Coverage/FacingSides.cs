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

    /// <summary>Corners of what the neighbour should cover of the panel and does not, what is wanted taken from the panel's own side; empty where it reaches in far enough.</summary>
    public IReadOnlyList<SkyDirection> Thin { get; private init; }

    /// <summary>Looks from one panel at the facing side of its neighbour.</summary>
    /// <param name="pose">The panel looked from.</param>
    /// <param name="towards">Position angle of the neighbour in the grid, at the panel.</param>
    /// <param name="halfDepth">Half of the panel's size towards the neighbour, a tangent.</param>
    /// <param name="halfSide">Half of the length of the panel's side there, a tangent.</param>
    /// <param name="from">One corner of the neighbour's facing side.</param>
    /// <param name="to">The other corner.</param>
    /// <param name="wanted">How far the neighbour should reach in, a tangent.</param>
    public static FacingSides Look(
        CameraPose pose,
        PositionAngle towards,
        double halfDepth,
        double halfSide,
        SkyDirection from,
        SkyDirection to,
        double wanted = 0.0
    )
    {
        var plane = new TangentPlane(pose.Centre);
        if (!plane.TryProject(from, out var start) || !plane.TryProject(to, out var end))
        {
            // A quarter of the sky away: it faces nothing.
            return new() { Gap = [], Thin = [] };
        }

        var (sin, cos) = Math.SinCos(towards.Radians);
        var (out1, side1) = Split(start);
        var (out2, side2) = Split(end);
        var low = Math.Max(-halfSide, Math.Min(side1, side2));
        var high = Math.Min(halfSide, Math.Max(side1, side2));
        if (high <= low)
        {
            return new() { Gap = [], Thin = [] };
        }

        var (atLow, atHigh) = (DepthAt(low), DepthAt(high));
        return new()
        {
            Depth = (atLow, atHigh),
            Gap = GapBetween(),
            Thin = Missing(),
        };

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
            var (open, depth) = atLow < 0.0 ? (low, atLow) : (high, atHigh);
            return
            [
                Place(halfDepth, Crossing(0.0)),
                Place(halfDepth, open),
                Place(halfDepth - depth, open),
            ];
        }

        // Between the line up to which the neighbour should reach in and its side, or the panel's own where a gap opens.
        IReadOnlyList<SkyDirection> Missing()
        {
            if (atLow >= wanted && atHigh >= wanted)
            {
                return [];
            }

            var (from, to) = (
                atLow < wanted ? low : Crossing(wanted),
                atHigh < wanted ? high : Crossing(wanted)
            );
            List<SkyDirection> corners = [Place(halfDepth - wanted, from)];
            if (atLow < wanted)
            {
                corners.Add(Place(halfDepth - Math.Max(atLow, 0.0), low));
            }

            if (atLow < 0.0 != atHigh < 0.0)
            {
                corners.Add(Place(halfDepth, Crossing(0.0)));
            }

            if (atHigh < wanted)
            {
                corners.Add(Place(halfDepth - Math.Max(atHigh, 0.0), high));
            }

            corners.Add(Place(halfDepth - wanted, to));
            return corners;
        }

        double Crossing(double depth) => low + ((high - low) * (atLow - depth) / (atLow - atHigh));
    }

    /// <summary>A depth in the plane as the angle it spans on the sky at the rim of the panel.</summary>
    public static Angle AtRim(double halfDepth, double depth) =>
        Angle.FromRadians(Math.Atan(halfDepth) - Math.Atan(halfDepth - depth));
}
