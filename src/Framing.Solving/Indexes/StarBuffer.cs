namespace Framing.Solving;

/// <summary>A list of star numbers that is filled again and again.</summary>
internal sealed class StarBuffer
{
    private int[] items = new int[256];

    public int Count { get; private set; }

    public ReadOnlySpan<int> Items => items.AsSpan(0, Count);

    public void Clear() => Count = 0;

    public void Add(ReadOnlySpan<int> stars)
    {
        if (Count + stars.Length > items.Length)
        {
            Array.Resize(ref items, 2 * (Count + stars.Length));
        }

        stars.CopyTo(items.AsSpan(Count));
        Count += stars.Length;
    }
}
