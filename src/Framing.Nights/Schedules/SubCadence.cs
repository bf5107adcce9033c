namespace Framing.Nights;

/// <summary>How subs of one filter follow each other in a block, in whole milliseconds.</summary>
/// <remarks>
/// Between two subs comes the read-out; after every few subs a dither; after a stretch of shooting a look at the focus. Each
/// block begins dithered and in focus, which is why every change into a block takes at least <see cref="Pause"/>.
/// </remarks>
internal sealed class SubCadence
{
    private const int Known = 1024;

    private readonly int subMs;
    private readonly int readoutMs;
    private readonly int ditherEvery;
    private readonly int ditherMs;
    private readonly int focusEverySubs;
    private readonly int focusMs;
    private readonly int[] offsets = new int[Known];

    public SubCadence(
        int subMs,
        int readoutMs,
        int ditherEvery,
        int ditherMs,
        int focusEverySubs,
        int focusMs
    )
    {
        (this.subMs, this.readoutMs) = (subMs, readoutMs);
        (this.ditherEvery, this.ditherMs) = (ditherEvery, ditherMs);
        (this.focusEverySubs, this.focusMs) = (focusEverySubs, focusMs);
        for (var i = 0; i < offsets.Length; i++)
        {
            offsets[i] = Reckon(i);
        }
    }

    /// <summary>From the begin of a sub to the begin of the next, without pauses.</summary>
    public int CycleMs => subMs + readoutMs;

    /// <summary>A dither and a look at the focus, as far as the filter has them.</summary>
    public int Pause => (ditherEvery > 0 ? ditherMs : 0) + (focusEverySubs > 0 ? focusMs : 0);

    /// <summary>One exposure.</summary>
    public int SubMs => subMs;

    /// <summary>From the end of the last exposure to the end of the block.</summary>
    public int ReadoutMs => readoutMs;

    /// <summary>When a sub of a block begins, after the begin of the block.</summary>
    /// <param name="index">0 for the first.</param>
    public int Offset(int index) => index < Known ? offsets[index] : Reckon(index);

    private int Reckon(int index) =>
        (index * CycleMs)
        + (ditherEvery > 0 ? index / ditherEvery * ditherMs : 0)
        + (focusEverySubs > 0 ? index / focusEverySubs * focusMs : 0);

    /// <summary>From the begin of the first exposure to the end of the last.</summary>
    public int Exposed(int subs) => Offset(subs - 1) + subMs;

    /// <summary>The whole block, the last read-out included.</summary>
    public int Length(int subs) => Exposed(subs) + readoutMs;

    /// <summary>The most subs whose exposures fit into a time, at most as many as are wanted.</summary>
    public int MostWithin(long ms, int wanted)
    {
        if (wanted < 1 || ms < subMs)
        {
            return 0;
        }

        var (low, high) = (1, wanted);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            if (Exposed(middle) <= ms)
            {
                low = middle;
            }
            else
            {
                high = middle - 1;
            }
        }

        return low;
    }
}
