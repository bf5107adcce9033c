namespace Framing.Nights;

/// <summary>The largest flow through a net from node 0 to node 1 (Dinic 1970: shortest paths, blocking flows).</summary>
internal sealed class LargestFlow(int nodes)
{
    private readonly List<int>[] leaving =
    [
        .. Enumerable.Range(0, nodes).Select(_ => new List<int>()),
    ];
    private readonly List<int> target = [];
    private readonly List<long> room = [];
    private readonly int[] level = new int[nodes];
    private readonly int[] next = new int[nodes];

    /// <summary>Adds a pipe and gives its number.</summary>
    public int Add(int from, int to, long capacity)
    {
        leaving[from].Add(target.Count);
        target.Add(to);
        room.Add(capacity);
        leaving[to].Add(target.Count);
        target.Add(from);
        room.Add(0);
        return target.Count - 2;
    }

    /// <summary>Empties the net: nothing flows, and the pipes out of node 0 have no room.</summary>
    public void Empty()
    {
        for (var pipe = 0; pipe < room.Count; pipe += 2)
        {
            room[pipe] = target[pipe + 1] == 0 ? 0 : room[pipe] + room[pipe + 1];
            room[pipe + 1] = 0;
        }
    }

    /// <summary>Gives a pipe more room; what flows goes on flowing.</summary>
    public void Raise(int pipe, long by) => room[pipe] += by;

    /// <summary>How much more can flow than flows already.</summary>
    public long Run()
    {
        var sum = 0L;
        while (Levels())
        {
            Array.Clear(next);
            for (var pushed = Push(0, long.MaxValue); pushed > 0; pushed = Push(0, long.MaxValue))
            {
                sum += pushed;
            }
        }

        return sum;
    }

    private bool Levels()
    {
        Array.Fill(level, -1);
        level[0] = 0;
        var queue = new Queue<int>([0]);
        while (queue.TryDequeue(out var node))
        {
            foreach (var pipe in leaving[node])
            {
                if (room[pipe] > 0 && level[target[pipe]] < 0)
                {
                    level[target[pipe]] = level[node] + 1;
                    queue.Enqueue(target[pipe]);
                }
            }
        }

        return level[1] >= 0;
    }

    private long Push(int node, long most)
    {
        if (node == 1)
        {
            return most;
        }

        for (; next[node] < leaving[node].Count; next[node]++)
        {
            var pipe = leaving[node][next[node]];
            if (room[pipe] > 0 && level[target[pipe]] == level[node] + 1)
            {
                var pushed = Push(target[pipe], Math.Min(most, room[pipe]));
                if (pushed > 0)
                {
                    room[pipe] -= pushed;
                    room[pipe ^ 1] += pushed;
                    return pushed;
                }
            }
        }

        return 0;
    }
}
