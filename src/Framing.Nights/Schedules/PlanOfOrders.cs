namespace Framing.Nights;

/// <summary>Orders of shooting for all nights with what they amount to; changed night by night.</summary>
internal sealed class PlanOfOrders
{
    private const double SmallPart = 1.01;

    private readonly ScheduleProblem problem;
    private readonly double[] airmass;
    private readonly int[] changes;

    public PlanOfOrders(
        ScheduleProblem problem,
        StartTimes times,
        IReadOnlyList<IReadOnlyList<BlockPart>> nights
    )
    {
        (this.problem, Times) = (problem, times);
        Nights = [.. nights.Select(Merged)];
        Shot = new int[problem.Tasks.Count];
        airmass = new double[Nights.Length];
        changes = new int[Nights.Length];
        for (var night = 0; night < Nights.Length; night++)
        {
            airmass[night] = times.Least(night, Nights[night]);
            changes[night] = Changes(Nights[night]);
            Count(Nights[night], 1);
        }
    }

    public StartTimes Times { get; }

    public IReadOnlyList<BlockPart>[] Nights { get; }

    public int[] Shot { get; }

    /// <summary>Subs of each task to be reached before anything else counts; null for none.</summary>
    public int[]? Target { get; set; }

    /// <summary>How many subs are missing to the target.</summary>
    public int Missing
    {
        get
        {
            var sum = 0;
            for (var i = 0; Target is { } target && i < Shot.Length; i++)
            {
                sum += Math.Max(0, target[i] - Shot[i]);
            }

            return sum;
        }
    }

    public ScheduleScore Score =>
        new(problem.LeastFraction(Shot), Shot.Sum(), changes.Sum(), airmass.Sum());

    /// <summary>Puts other orders in the place of one or two nights where this makes a better plan.</summary>
    /// <returns>Whether it did.</returns>
    public bool Try(params ReadOnlySpan<(int Night, IReadOnlyList<BlockPart> Parts)> other)
    {
        var (before, missing) = (Score, Missing);
        var kept = new (IReadOnlyList<BlockPart> Parts, double Airmass, int Changes)[other.Length];
        var fits = true;
        for (var i = 0; i < other.Length; i++)
        {
            var (night, raw) = other[i];
            var parts = Merged(raw);
            kept[i] = (Nights[night], airmass[night], changes[night]);
            Count(Nights[night], -1);
            Count(parts, 1);
            (Nights[night], changes[night]) = (parts, Changes(parts));
            fits &= Times.Fit(night, parts);
        }

        if (fits && MayBeBetter(before, missing))
        {
            for (var i = 0; i < other.Length; i++)
            {
                var night = other[i].Night;
                airmass[night] = Times.Least(night, Nights[night]);
            }

            if (Missing < missing || Score.IsBetterThan(before))
            {
                return true;
            }
        }

        for (var i = other.Length - 1; i >= 0; i--)
        {
            var night = other[i].Night;
            Count(Nights[night], -1);
            (Nights[night], airmass[night], changes[night]) = kept[i];
            Count(Nights[night], 1);
        }

        return false;
    }

    /// <summary>
    /// Makes one of neighbouring blocks of the same task where that fits and costs little airmass: nobody wants to stop for a
    /// hundredth of a magnitude.
    /// </summary>
    public void Join()
    {
        for (var night = 0; night < Nights.Length; night++)
        {
            for (var i = Nights[night].Count - 2; i >= 0; i--)
            {
                var (one, two) = (Nights[night][i], Nights[night][i + 1]);
                if (one.Task != two.Task)
                {
                    continue;
                }

                var parts = Nights[night].ToList();
                parts[i] = new(one.Task, one.Subs + two.Subs);
                parts.RemoveAt(i + 1);
                var joined = Times.Least(night, parts);
                if (joined <= airmass[night] * SmallPart)
                {
                    (Nights[night], airmass[night]) = (parts, joined);
                }
            }
        }
    }

    public Schedule Place() =>
        new(problem, [.. Nights.Select((parts, night) => Times.Place(night, parts)!)]);

    /// <summary>Without the airmass: false when the plan can be no better.</summary>
    private bool MayBeBetter(ScheduleScore before, int missing)
    {
        var now = Missing;
        return now != missing
            ? now < missing
            : (Score with { Airmass = double.NegativeInfinity }).IsBetterThan(before);
    }

    private void Count(IReadOnlyList<BlockPart> parts, int sign)
    {
        foreach (var part in parts)
        {
            Shot[part.Task] += sign * part.Subs;
        }
    }

    private int Changes(IReadOnlyList<BlockPart> parts)
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

    /// <summary>Empty blocks go.</summary>
    private static IReadOnlyList<BlockPart> Merged(IReadOnlyList<BlockPart> parts) =>
        parts.All(part => part.Subs > 0) ? parts : [.. parts.Where(part => part.Subs > 0)];
}
