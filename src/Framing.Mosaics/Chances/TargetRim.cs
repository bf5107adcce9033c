using System.Runtime.CompilerServices;
using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>The border of a target, prepared for asking again and again whether panels cover it.</summary>
internal sealed class TargetRim
{
    private readonly SkyOutline target;
    private readonly Edge[] edges;

    /// <summary>Prepares the border.</summary>
    /// <param name="target">The target.</param>
    /// <param name="planned">The panels without errors.</param>
    /// <param name="reach">How far, in radians, a panel's corners may stray from their places.</param>
    public TargetRim(SkyOutline target, DrawnPanels planned, double reach)
    {
        this.target = target;
        var diagonal = Math.Atan(double.Hypot(planned.HalfWidth, planned.HalfHeight));
        List<Edge> all = [];
        foreach (var area in target.Areas)
        {
            for (var i = 0; i < area.Corners.Count; i++)
            {
                var from = area.Corners[i].Vector;
                var to = area.Corners[(i + 1) % area.Corners.Count].Vector;
                var middle = (from + to).Unit();
                var within = Math.Cos(
                    Math.Min(
                        Math.PI,
                        diagonal + reach + Math.Asin(Math.Min(1.0, (from - to).Length / 2.0))
                    )
                );
                var owner = 0;
                var deepest = double.NegativeInfinity;
                List<int> near = [];
                for (var k = 0; k < planned.Axes.Length; k++)
                {
                    if (planned[k].Forward.Dot(middle) < within)
                    {
                        continue;
                    }

                    near.Add(k);
                    var depth = Math.Min(planned.Depth(k, from), planned.Depth(k, to));
                    if (depth > deepest)
                    {
                        (deepest, owner) = (depth, k);
                    }
                }

                all.Add(new(from, to, owner, [.. near]));
            }
        }

        edges = [.. all];
    }

    /// <summary>True when the panels cover the whole border.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public bool IsCovered(DrawnPanels panels)
    {
        // An edge with both ends in one panel lies in it. Edges follow each other, so most ends are known already.
        var (owner, inside) = (-1, false);
        var known = default(Vector3D);
        foreach (ref readonly var edge in edges.AsSpan())
        {
            var start =
                owner == edge.Owner && known == edge.From
                    ? inside
                    : panels.Depth(edge.Owner, edge.From) >= 0.0;
            inside = panels.Depth(edge.Owner, edge.To) >= 0.0;
            (owner, known) = (edge.Owner, edge.To);
            if (!(start && inside) && !panels.CoverArc(edge.From, edge.To, edge.Near))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>True when a place lies in the target.</summary>
    public bool Holds(Vector3D place)
    {
        var direction = SkyDirection.FromVector(place);
        foreach (var area in target.Areas)
        {
            if (area.Contains(direction))
            {
                return true;
            }
        }

        return false;
    }

    private readonly record struct Edge(Vector3D From, Vector3D To, int Owner, int[] Near);
}
