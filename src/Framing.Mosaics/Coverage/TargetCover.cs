using Framing.Sky;
using NetTopologySuite.Algorithm;
using NetTopologySuite.Algorithm.Locate;
using NetTopologySuite.Geometries;

namespace Framing.Mosaics;

/// <summary>What of a target no panel covers.</summary>
/// <remarks>
/// A target lies within 90° of its own middle, so that one tangent plane holds it however wide the mosaic is. Its sides are
/// cut by the panels on the sphere; the border of the panels is followed where it runs through the target. Panels count as
/// larger by <see cref="PanelUnion.Tolerance"/>, so that a target flush with a panel's edge is covered.
/// </remarks>
internal sealed class TargetCover
{
    private readonly PanelUnion union;
    private readonly TangentPlane plane;
    private readonly SkyOutline target;
    private readonly Geometry aim;
    private readonly List<ArcPiece> arcs = [];
    private readonly Dictionary<int, List<Vector3D>> cuts = [];

    /// <summary>Prepares a target.</summary>
    /// <param name="union">The panels.</param>
    /// <param name="target">The target.</param>
    public TargetCover(PanelUnion union, SkyOutline target)
    {
        this.union = union;
        this.target = target;
        plane = new(target.Middle);
        var sheet = new PlaneSheet(plane);
        aim = PlaneSheet.Union(target.Areas.Select(area => sheet.Figure(area.Corners)));
        Area = PlaneSheet.Area(aim);
    }

    /// <summary>The target's own area, parts that lie over each other counted once.</summary>
    public SolidAngle Area { get; }

    /// <summary>The part of the target's corners that panels cover, 0 to 1.</summary>
    public double CornersCovered() =>
        (double)target.Corners.Count(corner => Covered(corner.Vector)) / target.Corners.Count;

    /// <summary>The pieces that no panel covers.</summary>
    public IReadOnlyList<SkyRegion> Uncovered()
    {
        foreach (var ring in PlaneSheet.Rings(aim))
        {
            CutRing(ring);
        }

        FollowBorder();
        var middle = target.Middle.Vector;
        var loops = LoopTracer.Loops(arcs, union.Reach, keepRight: false, middle);
        return LoopNest.Regions(loops, -middle).Regions;
    }

    private bool Covered(Vector3D place)
    {
        var near = new List<int>();
        union.Index.Near(place, 0.0, near);
        return near.Exists(panel => union.Panels.Holds(panel, place, union.Tolerance));
    }

    /// <summary>Keeps what of a ring no panel covers, and notes at which sides of panels it was cut.</summary>
    private void CutRing((CoordinateSequence Points, bool Hole) ring)
    {
        var points = ring.Points;
        var corners = new Vector3D[points.Count - 1];

        // The target lies to the left. East, north and the line of sight make a right-handed frame, so that
        // counter-clockwise in the plane is counter-clockwise on the sphere.
        var forward = Orientation.IsCCW(points) != ring.Hole;
        for (var i = 0; i < corners.Length; i++)
        {
            var at = forward ? i : corners.Length - 1 - i;
            corners[at] = plane.Unproject(new(points.GetX(i), points.GetY(i))).Vector;
        }

        var near = new List<int>();
        var covers = new List<ArcSpan>();
        for (int i = 0, j = corners.Length - 1; i < corners.Length; j = i++)
        {
            var (from, to) = (corners[j], corners[i]);
            var middle = (from + to).Unit();
            union.Index.Near(middle, (from - middle).Length, near);
            covers.Clear();
            foreach (var panel in near)
            {
                AddCover(panel, from, to, covers);
            }

            Keep(from, to, covers);
        }
    }

    private void AddCover(int panel, Vector3D from, Vector3D to, List<ArcSpan> covers)
    {
        var panels = union.Panels;
        var span = new ArcSpan();
        for (
            var side = panels.First(panel);
            side < panels.First(panel) + panels.Size(panel);
            side++
        )
        {
            var normal = panels.Normals[side];
            if (
                !span.Narrow(
                    normal.Dot(from) + union.Tolerance,
                    normal.Dot(to) + union.Tolerance,
                    side
                )
            )
            {
                return;
            }
        }

        if (!span.IsEmpty)
        {
            covers.Add(span);
        }
    }

    private void Keep(Vector3D from, Vector3D to, List<ArcSpan> covers)
    {
        covers.Sort(static (a, b) => a.Low.CompareTo(b.Low));
        var (free, start) = (0.0, from);
        var lastSide = -1;
        foreach (var cover in covers)
        {
            if (cover.Low > free)
            {
                Note(lastSide, start);
                var end = Along(from, to, cover.Low);
                Note(cover.LowSide, end);
                Add(start, end);
            }

            if (cover.High > free)
            {
                (free, lastSide) = (cover.High, cover.HighSide);
                start = Along(from, to, free);
            }
        }

        if (lastSide >= 0 || covers.Count == 0)
        {
            Note(lastSide, start);
            Add(start, to);
        }
    }

    private void Add(Vector3D from, Vector3D to)
    {
        if ((to - from).Length > 4.0 * union.Tolerance)
        {
            arcs.Add(new(-1, from, to, 0, 0));
        }
    }

    private void Note(int side, Vector3D place)
    {
        if (side < 0)
        {
            return;
        }

        if (!cuts.TryGetValue(side, out var places))
        {
            cuts[side] = places = [];
        }

        places.Add(place);
    }

    /// <summary>Keeps what of the panels' border runs through the target, with bare sky to its left.</summary>
    private void FollowBorder()
    {
        var inside = new IndexedPointInAreaLocator(aim);
        var middle = target.Middle.Vector;
        var reach = 2.0 * Math.Sin(target.Radius.Radians / 2.0);
        List<Vector3D> stops = [];
        foreach (var arc in union.Border)
        {
            var near = reach + (arc.To - arc.From).Length + union.Reach;
            if ((arc.From - middle).Length > near)
            {
                continue;
            }

            stops.Clear();
            stops.Add(arc.From);
            if (cuts.TryGetValue(arc.Side, out var places))
            {
                var along = arc.To - arc.From;
                stops.AddRange(
                    places
                        .Where(place =>
                            (place - arc.From).Dot(along) > 0.0 && (arc.To - place).Dot(along) > 0.0
                        )
                        .OrderBy(place => (place - arc.From).Dot(along))
                );
            }

            stops.Add(arc.To);
            for (var i = 1; i < stops.Count; i++)
            {
                var (from, to) = (stops[i - 1], stops[i]);
                if (
                    (to - from).Length > 4.0 * union.Tolerance
                    && Holds(inside, Outside(arc.Side, from, to))
                )
                {
                    arcs.Add(new(arc.Side, to, from, 0, 0));
                }
            }
        }
    }

    /// <summary>A place beside the middle of an arc, just outside the panel.</summary>
    private Vector3D Outside(int side, Vector3D from, Vector3D to)
    {
        return (from + to).Unit() - (union.Panels.Normals[side] * (16.0 * union.Tolerance));
    }

    private bool Holds(IndexedPointInAreaLocator inside, Vector3D place) =>
        plane.TryProject(SkyDirection.FromVector(place), out var point)
        && inside.Locate(new Coordinate(point.Xi, point.Eta)) == Location.Interior;

    private static Vector3D Along(Vector3D from, Vector3D to, double at)
    {
        if (at >= 1.0)
        {
            return to;
        }

        return ((from * (1.0 - at)) + (to * at)).Unit();
    }
}
