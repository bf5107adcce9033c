namespace Framing.Nights;

/// <summary>The least time that numbers of subs take when blocks begin at whole minutes.</summary>
/// <remarks>
/// From the begin of a block to the begin of the next whole minutes pass. What that adds to a block's length hangs on the
/// change that follows; the least of those that can follow is taken. Over all ways to cut a number of subs into blocks the
/// least is taken, each further block entered by its pause.
/// </remarks>
internal static class WholeMinutes
{
    /// <summary>For each task and each number of subs from 0 to those wanted, milliseconds; the last block of a night included as if another followed.</summary>
    public static long[][] Lengths(ScheduleProblem problem)
    {
        var known = new Dictionary<(SubCadence, bool), long[]>();
        var most = problem
            .Tasks.GroupBy(task => task.Cadence)
            .ToDictionary(group => group.Key, group => group.Max(task => task.Wanted));
        var alone = problem
            .Tasks.GroupBy(task => task.Panel)
            .Where(panel => panel.Count() == 1)
            .Select(panel => panel.Key)
            .ToHashSet();
        var toPanel = problem
            .Tasks.Select(task => Math.Max(problem.RepointMs, task.Cadence.Pause))
            .Distinct()
            .ToArray();
        var all = toPanel
            .Concat(problem.Tasks.Select(task => task.Cadence.Pause))
            .Distinct()
            .ToArray();
        var lengths = new long[problem.Tasks.Count][];
        for (var i = 0; i < lengths.Length; i++)
        {
            var task = problem.Tasks[i];
            var key = (task.Cadence, alone.Contains(task.Panel));
            if (!known.TryGetValue(key, out var found))
            {
                // A panel with one filter: after its last block another panel follows.
                found = Cut(task.Cadence, most[task.Cadence], key.Item2 ? toPanel : all, all);
                known[key] = found;
            }

            lengths[i] = found;
        }

        return lengths;
    }

    private static long[] Cut(SubCadence cadence, int most, int[] afterLast, int[] after)
    {
        var earlier = new long[most + 1];
        var whole = new long[most + 1];
        for (var n = 1; n <= most; n++)
        {
            earlier[n] = Effective(cadence, n, after);
            whole[n] = Effective(cadence, n, afterLast);
            for (var k = 1; k < n; k++)
            {
                var one = Effective(cadence, n - k, after) + cadence.Pause;
                earlier[n] = Math.Min(earlier[n], earlier[k] + one);
                whole[n] = Math.Min(whole[n], whole[k] + one);
            }
        }

        return whole;
    }

    private static long Effective(SubCadence cadence, int subs, int[] changes)
    {
        var length = (long)cadence.Length(subs);
        var least = long.MaxValue;
        foreach (var change in changes)
        {
            var minutes =
                (length + change + ScheduleProblem.MinuteMs - 1) / ScheduleProblem.MinuteMs;
            least = Math.Min(least, (minutes * ScheduleProblem.MinuteMs) - change);
        }

        return least;
    }
}
