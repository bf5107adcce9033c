namespace Framing.Nights;

/// <summary>The blocks of one night in shooting order, with the earliest and the latest begin of each.</summary>
internal sealed class NightOrder(ScheduleProblem problem, int night)
{
    private readonly List<BlockPart> parts = [];
    private readonly List<int> earliest = [];
    private readonly List<int> latest = [];

    public IReadOnlyList<BlockPart> Parts => parts;

    public int Count => parts.Count;

    public int Night => night;

    public BlockPart this[int index] => parts[index];

    public void CopyFrom(NightOrder other)
    {
        parts.Clear();
        parts.AddRange(other.parts);
        earliest.Clear();
        earliest.AddRange(other.earliest);
        latest.Clear();
        latest.AddRange(other.latest);
    }

    public void Insert(int index, BlockPart part)
    {
        parts.Insert(index, part);
        Settle();
    }

    /// <summary>Takes blocks out; what is left still fits.</summary>
    public void RemoveRange(int index, int count)
    {
        parts.RemoveRange(index, count);
        Settle();
    }

    /// <summary>Gives a block other subs, 1 or more, that are known to fit.</summary>
    public void Resize(int index, int subs)
    {
        parts[index] = parts[index] with { Subs = subs };
        Settle();
    }

    /// <summary>Makes one block of two neighbours of the same task where that fits.</summary>
    public bool Join(int index)
    {
        var (one, two) = (parts[index], parts[index + 1]);
        if (
            one.Task != two.Task
            || Cost(index, new(one.Task, one.Subs + two.Subs), replaces: 2) < 0
        )
        {
            return false;
        }

        parts.RemoveAt(index + 1);
        Resize(index, one.Subs + two.Subs);
        return true;
    }

    /// <summary>By how many minutes what follows begins later when a block stands before <paramref name="index"/>; -1 when it does not fit.</summary>
    /// <param name="index">The place.</param>
    /// <param name="part">The block.</param>
    /// <param name="replaces">How many blocks from the place on it stands for.</param>
    public int Cost(int index, BlockPart part, int replaces = 0)
    {
        var task = problem.Tasks[part.Task];
        var ready =
            index == 0
                ? 0
                : earliest[index - 1]
                    + problem.LagMinutes(parts[index - 1].Task, parts[index - 1].Subs, part.Task);
        var start = task.EarliestStart(night, ready, part.Subs);
        if (start < 0)
        {
            return -1;
        }

        var next = index + replaces;
        if (next == parts.Count)
        {
            // Waiting counts, and so does the block; what comes first in a night waits for nothing.
            return index == 0
                ? task.Cadence.Length(part.Subs) / ScheduleProblem.MinuteMs
                : start
                    + (task.Cadence.Length(part.Subs) / ScheduleProblem.MinuteMs)
                    - earliest[index - 1]
                    - (
                        problem.Tasks[parts[index - 1].Task].Cadence.Length(parts[index - 1].Subs)
                        / ScheduleProblem.MinuteMs
                    );
        }

        var after = start + problem.LagMinutes(part.Task, part.Subs, parts[next].Task);
        return after > latest[next] ? -1 : Math.Max(0, after - earliest[next]);
    }

    /// <summary>The most subs, up to a number, that a block of a task can have at a place; 0 for none.</summary>
    public int Most(int index, int task, int subs, int replaces = 0)
    {
        var (low, high) = (0, subs);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            if (Cost(index, new(task, middle), replaces) >= 0)
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

    public int Changes
    {
        get
        {
            var sum = 0;
            for (var i = 1; i < parts.Count; i++)
            {
                sum +=
                    problem.Tasks[parts[i].Task].Panel == problem.Tasks[parts[i - 1].Task].Panel
                        ? 0
                        : 1;
            }

            return sum;
        }
    }

    private void Settle()
    {
        earliest.Clear();
        for (var i = 0; i < parts.Count; i++)
        {
            var (task, subs) = parts[i];
            var ready =
                i == 0
                    ? 0
                    : earliest[i - 1]
                        + problem.LagMinutes(parts[i - 1].Task, parts[i - 1].Subs, task);
            earliest.Add(problem.Tasks[task].EarliestStart(night, ready, subs));
            latest.Add(0);
        }

        latest.RemoveRange(parts.Count, latest.Count - parts.Count);
        for (var i = parts.Count - 1; i >= 0; i--)
        {
            var (task, subs) = parts[i];
            var limit =
                i == parts.Count - 1
                    ? int.MaxValue
                    : latest[i + 1] - problem.LagMinutes(task, subs, parts[i + 1].Task);
            latest[i] = problem.Tasks[task].LatestStart(night, limit, subs);
        }
    }
}
