using System.Runtime.InteropServices;

namespace Framing.Mosaics;

/// <summary>For each figure those whose caps touch its own, without itself.</summary>
internal sealed class NearLists
{
    private readonly int[] starts;
    private readonly List<int> members = [];

    public NearLists(ConvexFigures figures, FigureIndex index)
    {
        starts = new int[figures.Count + 1];
        var found = new List<int>();
        for (var i = 0; i < figures.Count; i++)
        {
            index.Near(figures.Middles[i], figures.Reaches[i], found);
            foreach (var j in found)
            {
                if (j != i)
                {
                    members.Add(j);
                }
            }

            starts[i + 1] = members.Count;
        }
    }

    /// <summary>The figures near one.</summary>
    public ReadOnlySpan<int> Of(int figure) =>
        CollectionsMarshal.AsSpan(members)[starts[figure]..starts[figure + 1]];
}
