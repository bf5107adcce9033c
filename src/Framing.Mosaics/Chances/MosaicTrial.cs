using System.Runtime.CompilerServices;
using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Looks at one drawn mosaic after another; one for each thread.</summary>
internal sealed class MosaicTrial
{
    private readonly DrawnPanels panels;
    private readonly PanelMeetings meetings;
    private readonly TargetRim? rim;
    private readonly double sliver;
    private readonly ConvexPieces pieces = new();
    private readonly RingList gaps = new();
    private readonly List<int> gapPanels = [];

    /// <summary>Prepares for trials.</summary>
    /// <param name="panels">The panels, drawn anew before each <see cref="Look"/>.</param>
    /// <param name="meetings">Where they meet.</param>
    /// <param name="rim">The border of the target, when it is asked for.</param>
    public MosaicTrial(DrawnPanels panels, PanelMeetings meetings, TargetRim? rim)
    {
        this.panels = panels;
        this.meetings = meetings;
        this.rim = rim;
        sliver = 1e-9 * 4.0 * panels.HalfWidth * panels.HalfHeight;
        Parted = new long[meetings.Pairs.Length];
    }

    /// <summary>How often each pair has parted so far.</summary>
    public long[] Parted { get; }

    /// <summary>Looks at the panels as they stand now.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public (bool Closed, double GapSteradians, bool Covered) Look()
    {
        gaps.Clear();
        gapPanels.Clear();
        var closed = true;
        var area = 0.0;
        for (var i = 0; i < Parted.Length; i++)
        {
            if (Parts(meetings.Pairs[i], meetings.NearPairs[i], ref area))
            {
                Parted[i]++;
                closed = false;
            }
        }

        for (var i = 0; i < meetings.Fours.Length; i++)
        {
            closed &= !HoleWithin(meetings.Fours[i], meetings.NearFours[i], ref area);
        }

        return (closed, area, rim is not null && rim.IsCovered(panels) && !AnyGapInTarget());
    }

    /// <summary>Whether the panels, as they stand now, close: ends at the first gap.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public bool Closes()
    {
        gaps.Clear();
        gapPanels.Clear();
        var area = 0.0;
        for (var i = 0; i < Parted.Length; i++)
        {
            if (Parts(meetings.Pairs[i], meetings.NearPairs[i], ref area))
            {
                return false;
            }
        }

        for (var i = 0; i < meetings.Fours.Length; i++)
        {
            if (HoleWithin(meetings.Fours[i], meetings.NearFours[i], ref area))
            {
                return false;
            }
        }

        return true;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private bool Parts(PanelPair pair, int[] near, ref double area)
    {
        var (first, second, alongWidth) = pair;
        var sign = alongWidth ? 1.0 : -1.0;
        var forth = NeighbourLook.At(panels, first, second, alongWidth, sign);
        var back = NeighbourLook.At(panels, second, first, alongWidth, -sign);
        if (forth.Closed && back.Closed)
        {
            return false;
        }

        var halfDepth = alongWidth ? panels.HalfWidth : panels.HalfHeight;
        var before = area;
        if (forth.Faces && !forth.Closed)
        {
            forth.Open(panels[first], alongWidth, sign, halfDepth, pieces);
            area += Uncovered(first, near);
        }

        if (back.Faces && !back.Closed)
        {
            back.Open(panels[second], alongWidth, -sign, halfDepth, pieces);
            area += Uncovered(first, near);
        }

        // Panels that do not even face each other stand apart, though no sky lies between facing sides.
        return area > before || !forth.Faces || !back.Faces;
    }

    /// <summary>True when a hole is enclosed where four panels meet.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private bool HoleWithin((int A, int B, int C, int D) four, int[] near, ref double area)
    {
        var (a, b, c, d) = four;
        var (w, h) = (panels.HalfWidth, panels.HalfHeight);

        // Convex figures with a common place make a star about it, and a star has no hole.
        var place =
            panels[a].Place(w, -h)
            + panels[b].Place(-w, -h)
            + panels[c].Place(w, h)
            + panels[d].Place(-w, h);
        if (
            panels.Depth(a, place) >= 0.0
            && panels.Depth(b, place) >= 0.0
            && panels.Depth(c, place) >= 0.0
            && panels.Depth(d, place) >= 0.0
        )
        {
            return false;
        }

        // Between the four middles: what is bare there and cannot get out is enclosed.
        var (p, q, r, s) = (
            panels[a].Forward,
            panels[b].Forward,
            panels[d].Forward,
            panels[c].Forward
        );
        pieces.Start(p, q, r, s);
        var hole = Uncovered(a, near, keep: false);
        if (hole <= 0.0)
        {
            return false;
        }

        if (
            !panels.CoverArc(p, q, near)
            || !panels.CoverArc(q, r, near)
            || !panels.CoverArc(r, s, near)
            || !panels.CoverArc(s, p, near)
        )
        {
            return false;
        }

        area += hole;
        Keep(a);
        return true;
    }

    /// <summary>Takes off the pieces what panels cover and what was counted before, and gives the area of the rest.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double Uncovered(int first, int[] near, bool keep = true)
    {
        Span<Vector3D> normals = stackalloc Vector3D[4];
        foreach (var index in near)
        {
            panels.Inwards(index, normals);
            pieces.TakeOff(normals);
            if (pieces.Pieces.Count == 0)
            {
                return 0.0;
            }
        }

        Span<Vector3D> sides = stackalloc Vector3D[16];
        for (var g = 0; g < gaps.Count; g++)
        {
            var ring = gaps[g];
            if (!meetings.CanShare(gapPanels[g], first))
            {
                continue;
            }

            // A side shorter than 1e-11 has no direction left, and none is needed.
            var count = 0;
            for (var i = 0; i < ring.Length && count < sides.Length; i++)
            {
                var (from, to) = (ring[i], ring[(i + 1) % ring.Length]);
                var side = from.Cross(to);
                if (side.Length > 1e-11 * from.Length * to.Length)
                {
                    sides[count++] = side;
                }
            }

            pieces.TakeOff(sides[..count]);
        }

        var area = pieces.Weigh(sliver);
        if (keep)
        {
            Keep(first);
        }

        return area;
    }

    private void Keep(int first)
    {
        for (var i = 0; i < pieces.Pieces.Count; i++)
        {
            gaps.Add(pieces.Pieces[i]);
            gapPanels.Add(first);
        }
    }

    private bool AnyGapInTarget()
    {
        for (var g = 0; g < gaps.Count; g++)
        {
            var ring = gaps[g];
            var middle = default(Vector3D);
            foreach (var corner in ring)
            {
                middle += corner.Unit();
            }

            if (rim!.Holds(middle))
            {
                return true;
            }
        }

        return false;
    }
}
