using System.Runtime.CompilerServices;

namespace Framing.Mosaics;

/// <summary>The part of an arc that a convex figure holds, narrowed side by side of the figure.</summary>
internal struct ArcSpan
{
    /// <summary>The whole arc.</summary>
    public ArcSpan() { }

    /// <summary>Where along the arc it begins, 0 to 1.</summary>
    public double Low { get; private set; } = 0.0;

    /// <summary>Where it ends, 0 to 1.</summary>
    public double High { get; private set; } = 1.0;

    /// <summary>The side of the figure at which the arc enters; -1 where it starts inside.</summary>
    public int LowSide { get; private set; } = -1;

    /// <summary>The side at which it leaves; -1 where it ends inside.</summary>
    public int HighSide { get; private set; } = -1;

    /// <summary>True when nothing is left.</summary>
    public readonly bool IsEmpty => High <= Low;

    /// <summary>Keeps what lies on the inner side of a side.</summary>
    /// <param name="from">The distance of the arc's start from the side, positive inside.</param>
    /// <param name="to">The distance of its end.</param>
    /// <param name="side">The number of the side.</param>
    /// <returns>False when all of the arc lies outside.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public bool Narrow(double from, double to, int side)
    {
        if (from >= 0.0)
        {
            if (to < 0.0 && from / (from - to) is var leaves && leaves < High)
            {
                (High, HighSide) = (leaves, side);
            }

            return true;
        }

        if (to < 0.0)
        {
            return false;
        }

        if (from / (from - to) is var enters && enters > Low)
        {
            (Low, LowSide) = (enters, side);
        }

        return true;
    }
}
