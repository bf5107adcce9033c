namespace Framing.Nights;

/// <summary>Sets of stretches of time, each by time and apart from each other.</summary>
internal static class Intervals
{
    /// <summary>When both hold.</summary>
    public static IReadOnlyList<UtcInterval> Both(
        IReadOnlyList<UtcInterval> one,
        IReadOnlyList<UtcInterval> other
    )
    {
        var both = new List<UtcInterval>();
        for (int i = 0, j = 0; i < one.Count && j < other.Count; )
        {
            var (a, b) = (one[i], other[j]);
            var late = a.Start >= b.Start ? a : b;
            var early = a.End <= b.End ? a : b;
            if (late.Start < early.End)
            {
                both.Add(new(late.Start, early.End, late.HeldBefore, early.HoldsAfter));
            }

            if (a.End <= b.End)
            {
                i++;
            }
            else
            {
                j++;
            }
        }

        return both;
    }

    /// <summary>When the first holds and the other does not.</summary>
    public static IReadOnlyList<UtcInterval> Without(
        IReadOnlyList<UtcInterval> one,
        IReadOnlyList<UtcInterval> other
    )
    {
        var left = one.ToList();
        foreach (var gone in other)
        {
            for (var i = left.Count - 1; i >= 0; i--)
            {
                var whole = left[i];
                if (gone.End <= whole.Start || gone.Start >= whole.End)
                {
                    continue;
                }

                left.RemoveAt(i);
                if (gone.End < whole.End)
                {
                    left.Insert(i, whole with { Start = gone.End, HeldBefore = false });
                }

                if (gone.Start > whole.Start)
                {
                    left.Insert(i, whole with { End = gone.Start, HoldsAfter = false });
                }
            }
        }

        return left;
    }
}
