namespace Framing.Nights;

/// <summary>The best plan of the nights among all, for problems that are small enough.</summary>
/// <remarks>
/// Dynamic programming over what has been shot so far: of all ways to the same subs, the same last block and the same time,
/// only the one with the fewest changes of panel and the least airmass is kept. It gives up when there are too many.
/// </remarks>
internal sealed class ExactSearch(ScheduleProblem problem)
{
    private readonly List<Way> ways = [new(-1, 0, default, 0, 0.0)];
    private int steps;

    /// <summary>The best plan.</summary>
    /// <param name="most">The most steps of the search.</param>
    /// <returns>The plan; null when the search was given up.</returns>
    public Schedule? Run(int most)
    {
        // Subs of all tasks as one number.
        var factors = new long[problem.Tasks.Count];
        var count = 1L;
        for (var i = 0; i < factors.Length; i++)
        {
            factors[i] = count;
            count *= problem.Tasks[i].Wanted + 1L;
            if (count > most)
            {
                return null;
            }
        }

        var reached = new Dictionary<long, int> { [0] = 0 };
        for (var night = 0; night < problem.Nights; night++)
        {
            if (!Night(night, factors, reached, most))
            {
                return null;
            }
        }

        Schedule? best = null;
        foreach (var way in reached.Values)
        {
            var plan = Follow(way);
            if (best is null || plan.Score.IsBetterThan(best.Score))
            {
                best = plan;
            }
        }

        return best;
    }

    /// <summary>From the subs reached before a night to those after it.</summary>
    private bool Night(int night, long[] factors, Dictionary<long, int> reached, int most)
    {
        var open = new SortedDictionary<int, Dictionary<(long Subs, int Last), int>>();
        foreach (var (subs, way) in reached.ToList())
        {
            if (!Grow(night, factors, subs, way, -1, 0, open, most))
            {
                return false;
            }
        }

        while (open.Count > 0)
        {
            var (minute, here) = open.First();
            open.Remove(minute);
            foreach (var ((subs, last), way) in here)
            {
                if (!reached.TryGetValue(subs, out var other) || IsBetter(way, other))
                {
                    reached[subs] = way;
                }

                if (!Grow(night, factors, subs, way, last, minute, open, most))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private bool Grow(
        int night,
        long[] factors,
        long subs,
        int way,
        int last,
        int end,
        SortedDictionary<int, Dictionary<(long Subs, int Last), int>> open,
        int most
    )
    {
        for (var i = 0; i < factors.Length; i++)
        {
            var task = problem.Tasks[i];
            var left = task.Wanted - (int)(subs / factors[i] % (task.Wanted + 1));
            var change = last < 0 ? 0 : problem.ChangeMs(problem.Tasks[last], task);
            var first = (end + change + ScheduleProblem.MinuteMs - 1) / ScheduleProblem.MinuteMs;
            for (var start = first; start <= task.LastStart(night); start++)
            {
                var fits = Math.Min(left, task.MostFrom(night, start));
                for (var k = 1; k <= fits; k++)
                {
                    if (++steps > most)
                    {
                        return false;
                    }

                    var changed = last >= 0 && problem.Tasks[last].Panel != task.Panel ? 1 : 0;
                    var next = new Way(
                        way,
                        night,
                        new(i, start, k),
                        ways[way].Changes + changed,
                        ways[way].Airmass + task.Airmass(night, start, k)
                    );
                    Keep(open, next, subs + (k * factors[i]), task.Cadence.Length(k));
                }
            }
        }

        return true;
    }

    private void Keep(
        SortedDictionary<int, Dictionary<(long Subs, int Last), int>> open,
        Way next,
        long subs,
        int length
    )
    {
        var end = (next.Block.Minute * ScheduleProblem.MinuteMs) + length;
        if (!open.TryGetValue(end, out var here))
        {
            open[end] = here = [];
        }

        var key = (subs, next.Block.Task);
        if (!here.TryGetValue(key, out var other))
        {
            here[key] = ways.Count;
            ways.Add(next);
        }
        else if (IsBetter(next, ways[other]))
        {
            ways[other] = next;
        }
    }

    private bool IsBetter(int one, int other) => IsBetter(ways[one], ways[other]);

    private static bool IsBetter(Way one, Way other) =>
        one.Changes != other.Changes ? one.Changes < other.Changes : one.Airmass < other.Airmass;

    private Schedule Follow(int way)
    {
        var nights = new List<ScheduledBlock>[problem.Nights];
        for (var night = 0; night < nights.Length; night++)
        {
            nights[night] = [];
        }

        for (; way > 0; way = ways[way].Before)
        {
            nights[ways[way].Night].Insert(0, ways[way].Block);
        }

        return new(problem, nights);
    }

    private readonly record struct Way(
        int Before,
        int Night,
        ScheduledBlock Block,
        int Changes,
        double Airmass
    );
}
