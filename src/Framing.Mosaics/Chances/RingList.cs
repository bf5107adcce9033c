using System.Runtime.CompilerServices;
using Framing.Sky;

namespace Framing.Mosaics;

/// <summary>Many small rings of corners in one piece of memory that is used again and again.</summary>
internal sealed class RingList
{
    private Vector3D[] corners = new Vector3D[256];

    /// <summary>Where each ring ends; the first begins at 0.</summary>
    private int[] ends = new int[32];

    public int Count { get; private set; }

    public ReadOnlySpan<Vector3D> this[int index]
    {
        get
        {
            var start = index == 0 ? 0 : ends[index - 1];
            return new(corners, start, ends[index] - start);
        }
    }

    public void Clear() => Count = 0;

    /// <summary>Adds a copy of a ring.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Add(ReadOnlySpan<Vector3D> ring)
    {
        var used = Count == 0 ? 0 : ends[Count - 1];
        if (used + ring.Length > corners.Length)
        {
            Array.Resize(ref corners, 2 * (used + ring.Length));
        }

        if (Count == ends.Length)
        {
            Array.Resize(ref ends, 2 * Count);
        }

        for (var i = 0; i < ring.Length; i++)
        {
            corners[used + i] = ring[i];
        }

        ends[Count++] = used + ring.Length;
    }
}
