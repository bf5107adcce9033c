using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>The sky that two neighbouring panels share.</summary>
/// <param name="First">Number of the panel to the left or above.</param>
/// <param name="Second">Number of the panel to the right or below.</param>
/// <param name="Corners">Its corners in order, its sides great-circle arcs; empty where the two share nothing.</param>
public sealed record SharedStrip(int First, int Second, IReadOnlyList<SkyDirection> Corners)
{
    /// <summary>A side shorter than this, in radians, is rounding: a hundredth of a thousandth of an arcsecond.</summary>
    private const double Hair = 5e-11;

    /// <summary>What every pair of neighbours of a mosaic shares, as its panels really stand.</summary>
    /// <param name="mosaic">The mosaic.</param>
    /// <returns>One strip a pair: those side by side first, in reading order.</returns>
    public static IReadOnlyList<SharedStrip> Of(Mosaic mosaic)
    {
        ArgumentNullException.ThrowIfNull(mosaic);
        return
        [
            .. mosaic.Neighbours.Pairs.Select(pair =>
            {
                var (first, second) = (mosaic.Panels[pair.First], mosaic.Panels[pair.Second]);
                return new SharedStrip(first.Number, second.Number, Common(first, second));
            }),
        ];
    }

    /// <summary>The common part of two convex panels: one of them, cut along each side of the other.</summary>
    private static SkyDirection[] Common(Panel one, Panel other)
    {
        List<Vector3D> ring = [.. one.Corners.Select(corner => corner.Vector)];
        for (var i = 0; i < other.Corners.Count && ring.Count > 0; i++)
        {
            var inwards = other
                .Corners[i]
                .Vector.Cross(other.Corners[(i + 1) % other.Corners.Count].Vector);
            if (inwards.Dot(other.Pose.Centre.Vector) < 0.0)
            {
                inwards = -inwards;
            }

            ring = Cut(ring, inwards);
        }

        List<Vector3D> corners = [];
        foreach (var corner in ring.Select(corner => corner.Unit()))
        {
            if (corners.Count == 0 || (corner - corners[^1]).Length > Hair)
            {
                corners.Add(corner);
            }
        }

        if (corners.Count > 1 && (corners[0] - corners[^1]).Length <= Hair)
        {
            corners.RemoveAt(corners.Count - 1);
        }

        return corners.Count < 3 ? [] : [.. corners.Select(SkyDirection.FromVector)];
    }

    private static List<Vector3D> Cut(List<Vector3D> ring, Vector3D inwards)
    {
        List<Vector3D> kept = [];
        for (var i = 0; i < ring.Count; i++)
        {
            var (from, to) = (ring[i], ring[(i + 1) % ring.Count]);
            var (start, end) = (from.Dot(inwards), to.Dot(inwards));
            if (start > 0.0)
            {
                kept.Add(from);
            }

            if (start > 0.0 != end > 0.0)
            {
                kept.Add(((to * start) - (from * end)) * (1.0 / (start - end)));
            }
        }

        return kept;
    }
}
