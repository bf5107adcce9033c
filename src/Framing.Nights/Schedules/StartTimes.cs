namespace Framing.Nights;

/// <summary>Finds when the blocks of a night begin, their order and numbers of subs being settled.</summary>
/// <remarks>
/// Least sum of airmasses, exactly: the best begin of each block after the best of all before it (dynamic programming over
/// the whole minutes of the night). Among equals the earliest.
/// </remarks>
internal sealed class StartTimes(ScheduleProblem problem)
{
    /// <summary>Finding the least airmass of a night takes about as long as this many questions whether it fits.</summary>
    private const int LeastWork = 10;

    private readonly Dictionary<(int Task, int Night, int Subs), Costs> known = [];

    /// <summary>What was reckoned so far, in questions whether a night fits.</summary>
    public int Work { get; private set; }

    /// <summary>True when the blocks find room one after another.</summary>
    public bool Fit(int night, IReadOnlyList<BlockPart> parts)
    {
        Work++;
        var minute = 0;
        for (var i = 0; i < parts.Count; i++)
        {
            var (task, subs) = parts[i];
            if (i > 0)
            {
                minute += problem.LagMinutes(parts[i - 1].Task, parts[i - 1].Subs, task);
            }

            minute = problem.Tasks[task].EarliestStart(night, minute, subs);
            if (minute < 0)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The least sum of airmasses; infinite when the blocks do not fit.</summary>
    public double Least(int night, IReadOnlyList<BlockPart> parts)
    {
        if (parts.Count == 0)
        {
            return 0.0;
        }

        Work += LeastWork;
        if (!Fit(night, parts))
        {
            return double.PositiveInfinity;
        }

        return Sums(night, parts, keep: null);
    }

    /// <summary>The blocks with their best begins; null when they do not fit.</summary>
    public IReadOnlyList<ScheduledBlock>? Place(int night, IReadOnlyList<BlockPart> parts)
    {
        if (parts.Count == 0)
        {
            return [];
        }

        if (!Fit(night, parts))
        {
            return null;
        }

        var keep = new List<(int First, int[] Best)>();
        Sums(night, parts, keep);
        var blocks = new ScheduledBlock[parts.Count];
        var limit = int.MaxValue;
        for (var i = parts.Count - 1; i >= 0; i--)
        {
            var (first, best) = keep[i];
            var start = best[Math.Min(limit, first + best.Length - 1) - first];
            blocks[i] = new(parts[i].Task, start, parts[i].Subs);
            if (i > 0)
            {
                limit =
                    start - problem.LagMinutes(parts[i - 1].Task, parts[i - 1].Subs, parts[i].Task);
            }
        }

        return blocks;
    }

    /// <summary>Runs through the blocks; with <paramref name="keep"/> it notes for each the best begin up to each minute.</summary>
    private double Sums(int night, IReadOnlyList<BlockPart> parts, List<(int, int[])>? keep)
    {
        double[] before = [];
        var beforeFirst = 0;
        for (var i = 0; i < parts.Count; i++)
        {
            var (task, subs) = parts[i];
            var (first, costs) = CostsOf(task, night, subs);
            var lag = i == 0 ? 0 : problem.LagMinutes(parts[i - 1].Task, parts[i - 1].Subs, task);
            var sums = new double[costs.Length];
            var best = keep is null ? null : new int[costs.Length];
            var (least, leastAt) = (double.PositiveInfinity, first);
            for (var j = 0; j < costs.Length; j++)
            {
                var earlier = i == 0 ? 0.0 : Up(before, beforeFirst, first + j - lag);
                var sum = costs[j] + earlier;
                if (sum < least)
                {
                    (least, leastAt) = (sum, first + j);
                }

                sums[j] = least;
                best?[j] = leastAt;
            }

            keep?.Add((first, best!));
            (before, beforeFirst) = (sums, first);
        }

        return before.Length == 0 ? double.PositiveInfinity : before[^1];
    }

    private static double Up(double[] least, int first, int minute)
    {
        var index = minute - first;
        if (index < 0 || least.Length == 0)
        {
            return double.PositiveInfinity;
        }

        return least[Math.Min(index, least.Length - 1)];
    }

    private Costs CostsOf(int task, int night, int subs)
    {
        if (known.TryGetValue((task, night, subs), out var found))
        {
            return found;
        }

        var shot = problem.Tasks[task];
        var last = shot.LastStart(night);
        var first = 0;
        while (first <= last && shot.MostFrom(night, first) < subs)
        {
            first++;
        }

        while (last >= first && shot.MostFrom(night, last) < subs)
        {
            last--;
        }

        var costs = new double[Math.Max(0, last - first + 1)];
        for (var i = 0; i < costs.Length; i++)
        {
            costs[i] =
                shot.MostFrom(night, first + i) >= subs
                    ? shot.Airmass(night, first + i, subs)
                    : double.PositiveInfinity;
        }

        return known[(task, night, subs)] = new(first, costs);
    }

    private readonly record struct Costs(int First, double[] Sums);
}
