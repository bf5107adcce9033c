namespace Framing.Catalogue;

/// <summary>How many slips of typing lie between two keys.</summary>
internal static class EditDistance
{
    private const int LongestOnStack = 256;

    /// <summary>
    /// The least number of letters left out, added, changed, or swapped with their neighbour that make one key of the other
    /// (optimal string alignment).
    /// </summary>
    public static int Between(ReadOnlySpan<char> left, ReadOnlySpan<char> right)
    {
        var width = right.Length + 1;
        Span<int> rows =
            3 * width <= LongestOnStack ? stackalloc int[3 * width] : new int[3 * width];
        var before = rows[..width];
        var above = rows.Slice(width, width);
        var current = rows.Slice(2 * width, width);
        for (var j = 0; j < width; j++)
        {
            above[j] = j;
        }

        for (var i = 1; i <= left.Length; i++)
        {
            current[0] = i;
            for (var j = 1; j < width; j++)
            {
                var change = above[j - 1] + (left[i - 1] == right[j - 1] ? 0 : 1);
                var best = Math.Min(change, Math.Min(above[j], current[j - 1]) + 1);
                if (i > 1 && j > 1 && left[i - 1] == right[j - 2] && left[i - 2] == right[j - 1])
                {
                    best = Math.Min(best, before[j - 2] + 1);
                }

                current[j] = best;
            }

            var oldest = before;
            before = above;
            above = current;
            current = oldest;
        }

        return above[right.Length];
    }
}
