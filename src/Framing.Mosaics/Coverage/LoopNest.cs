using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Sorts loops into regions: each outer loop with the loops that lie inside it.</summary>
internal static class LoopNest
{
    /// <summary>Sorts loops.</summary>
    /// <param name="loops">Loops with what they bound to the left.</param>
    /// <param name="far">A place that no region holds.</param>
    /// <returns>
    /// The regions, and for each loop its region: that it bounds from outside or from inside; -1 for a loop that lies inside
    /// none, which bounds what holds the far place.
    /// </returns>
    public static (List<SkyRegion> Regions, int[] RegionOf) Regions(
        IReadOnlyList<SkyLoop> loops,
        Vector3D far
    )
    {
        var regionOf = new int[loops.Count];
        List<int> outers = [];
        for (var i = 0; i < loops.Count; i++)
        {
            regionOf[i] = loops[i].SignedArea > 0.0 ? outers.Count : -1;
            if (regionOf[i] >= 0)
            {
                outers.Add(i);
            }
        }

        var areas = outers.Select(i => loops[i].SignedArea).ToArray();
        var holes = new List<IReadOnlyList<SkyDirection>>[outers.Count];
        for (var i = 0; i < loops.Count; i++)
        {
            if (loops[i].SignedArea > 0.0)
            {
                continue;
            }

            regionOf[i] = Innermost(loops, outers, loops[i], far);
            if (regionOf[i] >= 0)
            {
                areas[regionOf[i]] += loops[i].SignedArea;
                (holes[regionOf[i]] ??= []).Add(Directions(loops[i]));
            }
        }

        List<SkyRegion> regions =
        [
            .. outers.Select(
                (loop, region) =>
                    new SkyRegion(
                        Directions(loops[loop]),
                        holes[region] ?? [],
                        SolidAngle.FromSteradians(Math.Max(0.0, areas[region]))
                    )
            ),
        ];
        return (regions, regionOf);
    }

    /// <summary>The smallest outer loop around another loop; -1 for none.</summary>
    private static int Innermost(
        IReadOnlyList<SkyLoop> loops,
        List<int> outers,
        SkyLoop inner,
        Vector3D far
    )
    {
        var found = -1;
        for (var region = 0; region < outers.Count; region++)
        {
            var outer = loops[outers[region]];
            if (
                outer.SignedArea > -inner.SignedArea
                && (found < 0 || outer.SignedArea < loops[outers[found]].SignedArea)
                && (
                    outer.Reach > 1.0
                    || outer.SignedArea > Math.PI
                    || (inner.Corners[0] - outer.Corners[0]).Length <= outer.Reach
                )
                && outer.Parts(inner.Corners[0], far)
            )
            {
                found = region;
            }
        }

        return found;
    }

    private static SkyDirection[] Directions(SkyLoop loop) =>
        [.. loop.Corners.Select(SkyDirection.FromVector)];
}
