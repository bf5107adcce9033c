using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Joins arcs into loops: each starts where another ends.</summary>
internal sealed class LoopTracer
{
    private readonly List<ArcPiece> arcs;
    private readonly double reach;
    private readonly double turnSign;
    private readonly int[] heads;
    private readonly int[] nexts;
    private readonly bool[] used;

    private LoopTracer(List<ArcPiece> arcs, double reach, bool keepRight)
    {
        this.arcs = arcs;
        this.reach = reach;
        turnSign = keepRight ? -1.0 : 1.0;
        var buckets = 16;
        while (buckets < 2 * arcs.Count)
        {
            buckets *= 2;
        }

        heads = new int[buckets];
        Array.Fill(heads, -1);
        nexts = new int[arcs.Count];
        used = new bool[arcs.Count];
        for (var i = arcs.Count - 1; i >= 0; i--)
        {
            var (x, y, z) = Cell(arcs[i].From);
            ref var head = ref heads[Bucket(x, y, z)];
            nexts[i] = head;
            head = i;
        }
    }

    /// <summary>Joins arcs.</summary>
    /// <param name="arcs">The arcs.</param>
    /// <param name="reach">How far apart an end and the next start may lie: rounding, and arcs too short to be listed.</param>
    /// <param name="keepRight">
    /// What happens where loops touch in a point: true keeps what lies to the right apart, false what lies to the left.
    /// </param>
    /// <param name="apex">For <see cref="SkyLoop"/>.</param>
    /// <returns>All loops.</returns>
    public static List<SkyLoop> Loops(
        List<ArcPiece> arcs,
        double reach,
        bool keepRight,
        Vector3D apex
    )
    {
        var loops = new List<SkyLoop>();
        if (arcs.Count == 0)
        {
            return loops;
        }

        var tracer = new LoopTracer(arcs, reach, keepRight);
        var chain = new List<int>();
        for (var i = 0; i < arcs.Count; i++)
        {
            if (!tracer.used[i])
            {
                tracer.Follow(i, chain);
                loops.Add(new([.. chain], [.. chain.Select(arc => arcs[arc].From)], apex));
            }
        }

        return loops;
    }

    private void Follow(int first, List<int> chain)
    {
        chain.Clear();
        var arc = first;
        do
        {
            used[arc] = true;
            chain.Add(arc);
            arc = Next(arc, first);
        } while (arc >= 0 && arc != first);
    }

    /// <summary>The arc that goes on where one ends; the first one of the loop closes it; -1 where none does.</summary>
    private int Next(int arc, int first)
    {
        var at = arcs[arc].To;
        var (x, y, z) = Cell(at);
        var best = -1;
        var bestTurn = double.NegativeInfinity;
        Span<int> seen = stackalloc int[8];
        var count = 0;
        for (var corner = 0; corner < 8; corner++)
        {
            var bucket = Bucket(
                x + ((corner & 1) == 0 ? 0 : Side(at.X, x)),
                y + ((corner & 2) == 0 ? 0 : Side(at.Y, y)),
                z + ((corner & 4) == 0 ? 0 : Side(at.Z, z))
            );
            if (seen[..count].Contains(bucket))
            {
                continue;
            }

            seen[count++] = bucket;
            for (var i = heads[bucket]; i >= 0; i = nexts[i])
            {
                if ((used[i] && i != first) || (arcs[i].From - at).Length > reach)
                {
                    continue;
                }

                var turn = Turn(arcs[arc], arcs[i]);
                if (turn > bestTurn)
                {
                    (best, bestTurn) = (i, turn);
                }
            }
        }

        return best;
    }

    /// <summary>How far one turns to the wanted side from an arc to the next; going straight back counts as least.</summary>
    private double Turn(ArcPiece arc, ArcPiece next)
    {
        var at = arc.To;
        var along = at - arc.From;
        var on = next.To - next.From;
        var turn = turnSign * Math.Atan2(at.Dot(along.Cross(on)), along.Dot(on));
        return turn > Math.PI - 1e-7 ? -Math.PI : turn;
    }

    private (long X, long Y, long Z) Cell(Vector3D at) =>
        (
            (long)Math.Floor(at.X / (2.0 * reach)),
            (long)Math.Floor(at.Y / (2.0 * reach)),
            (long)Math.Floor(at.Z / (2.0 * reach))
        );

    private int Side(double at, long cell) => (at / (2.0 * reach)) - cell < 0.5 ? -1 : 1;

    private int Bucket(long x, long y, long z)
    {
        var hash = unchecked(
            ((ulong)x * 0x9E3779B97F4A7C15UL)
            ^ ((ulong)y * 0xC2B2AE3D27D4EB4FUL)
            ^ ((ulong)z * 0x165667B19E3779F9UL)
        );
        return (int)((hash ^ (hash >> 29)) & (ulong)(heads.Length - 1));
    }
}
