namespace Framing.Nights;

/// <summary>Looks for orders of shooting: takes blocks out and puts them back where they cost least, again and again.</summary>
/// <remarks>
/// Ruin and recreate (Schrimpf and others 2000) with a threshold that sinks: a worse plan is kept at times, the best is
/// remembered. Counted, not timed; two searches with one seed go the same way.
/// </remarks>
internal sealed class RuinAndRecreate
{
    /// <summary>One place in so many is passed over, so that the same blocks do not always go back to the same places.</summary>
    private const int Blink = 40;

    private const double LongestString = 6.0;

    private readonly ScheduleProblem problem;
    private readonly Random random;
    private readonly bool oneFilter;
    private readonly Plan best;
    private readonly Plan now;
    private readonly Plan trial;
    private int[] needed;

    public RuinAndRecreate(ScheduleProblem problem, int seed)
    {
        this.problem = problem;
        random = new(seed);
        oneFilter = problem.Tasks.Select(task => task.Filter).Distinct().Count() == 1;
        (best, now, trial) = (new(problem), new(problem), new(problem));
        needed = new int[problem.Tasks.Count];
    }

    /// <summary>The best orders that were found.</summary>
    public IReadOnlyList<BlockPart>[] Orders =>
        [.. best.Nights.Select(night => night.Parts.ToArray())];

    /// <summary>The subs of each task in <see cref="Orders"/>.</summary>
    public IReadOnlyList<int> Shot => best.Shot;

    public int Subs => best.Shot.Sum();

    public int Changes => best.Changes;

    /// <summary>Goes on from what another search found.</summary>
    public void From(RuinAndRecreate other)
    {
        best.CopyFrom(other.best);
        now.CopyFrom(best);
    }

    /// <summary>Looks for orders in which each task gets at least some subs.</summary>
    /// <param name="subs">The subs of each task.</param>
    /// <param name="rounds">How often to try.</param>
    /// <returns>Whether they were found; if not, nothing has changed.</returns>
    public bool Reach(int[] subs, int rounds)
    {
        var before = needed;
        needed = subs;
        now.CopyFrom(best);
        Recreate(now);
        var value = Missing(now);
        var least = value;
        var (warm, cold) = (20.0, 0.3);
        for (var round = 0; round < rounds && least > 0.0; round++)
        {
            trial.CopyFrom(now);
            Ruin(trial, trim: false);
            Recreate(trial);
            var missing = Missing(trial);
            if (missing < value + Threshold(warm, cold, round, rounds))
            {
                now.CopyFrom(trial);
                value = missing;
                least = Math.Min(least, value);
            }
        }

        if (least > 0.0)
        {
            needed = before;
            return false;
        }

        best.CopyFrom(now);
        return true;
    }

    /// <summary>More subs, then fewer changes of panel, without falling below what was reached.</summary>
    /// <param name="rounds">How often to try.</param>
    /// <param name="most">The subs that cannot be exceeded.</param>
    public void Improve(int rounds, int most)
    {
        now.CopyFrom(best);
        Fill(now);
        var value = Value(now);
        var least = value;
        best.CopyFrom(now);
        for (var round = 0; round < rounds; round++)
        {
            if (best.Changes == FewestChanges && Subs == most)
            {
                break;
            }

            trial.CopyFrom(now);
            Ruin(trial, trim: true);
            Recreate(trial);
            Fill(trial);
            var other = Value(trial);
            if (other < value + Threshold(3.0, 0.02, round, rounds))
            {
                now.CopyFrom(trial);
                value = other;
                if (value < least)
                {
                    least = value;
                    best.CopyFrom(now);
                }
            }
        }
    }

    private int FewestChanges =>
        Math.Max(
            0,
            problem
                .Tasks.Where((_, i) => best.Shot[i] > 0)
                .Select(task => task.Panel)
                .Distinct()
                .Count() - problem.Nights
        );

    private double Threshold(double warm, double cold, int round, int rounds) =>
        -Math.Log(1.0 - random.NextDouble()) * warm * Math.Pow(cold / warm, round / (double)rounds);

    /// <summary>Minutes of shooting that are missing.</summary>
    private double Missing(Plan plan)
    {
        var sum = 0.0;
        for (var i = 0; i < needed.Length; i++)
        {
            sum += (double)Math.Max(0, needed[i] - plan.Shot[i]) * problem.Tasks[i].Cadence.CycleMs;
        }

        return sum / ScheduleProblem.MinuteMs;
    }

    private double Value(Plan plan) =>
        (100.0 * Missing(plan)) - plan.Shot.Sum() + (0.01 * plan.Changes);

    private void Ruin(Plan plan, bool trim)
    {
        var strings = random.Next(1, 4);
        for (var i = 0; i < strings; i++)
        {
            var night = plan.Nights[random.Next(problem.Nights)];
            if (night.Count == 0)
            {
                continue;
            }

            if (random.Next(3) == 0)
            {
                var some = random.Next(1, 4);
                for (var k = 0; k < some && night.Count > 0; k++)
                {
                    RemoveVisit(plan, night, random.Next(night.Count));
                }
            }
            else
            {
                var length = 1 + (int)(random.NextDouble() * Math.Min(LongestString, night.Count));
                length = Math.Min(length, night.Count);
                plan.Remove(night, random.Next(night.Count - length + 1), length);
            }

            if (trim && random.Next(2) == 0)
            {
                Trim(plan, night);
            }
        }
    }

    /// <summary>Takes out a block, and at times all that stands beside it of the same panel.</summary>
    private void RemoveVisit(Plan plan, NightOrder night, int at)
    {
        var (from, to) = (at, at + 1);
        if (random.Next(3) > 0)
        {
            var panel = problem.Tasks[night[at].Task].Panel;
            while (from > 0 && problem.Tasks[night[from - 1].Task].Panel == panel)
            {
                from--;
            }

            while (to < night.Count && problem.Tasks[night[to].Task].Panel == panel)
            {
                to++;
            }
        }

        plan.Remove(night, from, to - from);
    }

    /// <summary>Back to what is needed, so that there is time for something else.</summary>
    private void Trim(Plan plan, NightOrder night)
    {
        for (var i = night.Count - 1; i >= 0; i--)
        {
            var (task, subs) = night[i];
            var spare = Math.Min(plan.Shot[task] - needed[task], subs);
            if (spare == subs)
            {
                plan.Remove(night, i, 1);
            }
            else if (spare > 0)
            {
                plan.Resize(night, i, subs - spare);
            }
        }
    }

    private void Recreate(Plan plan)
    {
        var missing = new List<(double Key, int Task)>();
        var by = random.Next(oneFilter ? 3 : 6);
        var turn = random.Next();
        var whole = random.Next(2) == 0;
        for (var i = 0; i < needed.Length; i++)
        {
            if (plan.Shot[i] < needed[i])
            {
                var task = problem.Tasks[i];
                missing.Add(
                    (
                        by switch
                        {
                            0 => random.NextDouble(),
                            1 => -(double)(needed[i] - plan.Shot[i]) * task.Cadence.CycleMs,
                            2 => task.OpenMs - random.Next(3_600_000),
                            _ => HashOf(task.Panel, turn) + random.NextDouble(),
                        },
                        i
                    )
                );
            }
        }

        missing.Sort();
        foreach (var (_, task) in missing)
        {
            while (
                plan.Shot[task] < needed[task]
                && Put(plan, task, needed[task] - plan.Shot[task], whole) > 0
            )
            {
                // Piece by piece where there is no room for all of it.
            }
        }
    }

    /// <summary>Some order of the panels, another one for each turn; the filters of a panel stay together.</summary>
    private static double HashOf(int panel, int turn) =>
        (uint)((panel + 1) * 0x9E3779B1L * (turn | 1)) >> 8;

    /// <summary>Puts subs of a task where they cost least: all of them, or else, unless they have to stay whole, as many as there is room for.</summary>
    /// <returns>How many.</returns>
    private int Put(Plan plan, int task, int subs, bool whole)
    {
        var (bestNight, bestAt, bestReplaces, bestSubs, bestCost) = (-1, 0, 0, 0, int.MaxValue);
        for (var n = 0; n < problem.Nights; n++)
        {
            if (problem.Tasks[task].LastStart(n) < 0)
            {
                continue;
            }

            var night = plan.Nights[n];
            for (var at = 0; at <= night.Count; at++)
            {
                if (random.Next(Blink) == 0)
                {
                    continue;
                }

                var replaces = at < night.Count && night[at].Task == task ? 1 : 0;
                var has = replaces == 1 ? night[at].Subs : 0;
                var (fits, cost) = (subs, night.Cost(at, new(task, has + subs), replaces));
                if (
                    cost < 0
                    && !whole
                    && bestSubs < subs
                    && night.Cost(at, new(task, has + bestSubs + 1), replaces) >= 0
                )
                {
                    fits = night.Most(at, task, has + subs, replaces) - has;
                    cost = fits > bestSubs ? 0 : -1;
                }

                if (cost >= 0 && (fits > bestSubs || (fits == bestSubs && cost < bestCost)))
                {
                    (bestNight, bestAt, bestReplaces, bestSubs, bestCost) = (
                        n,
                        at,
                        replaces,
                        fits,
                        cost
                    );
                }
            }
        }

        if (bestSubs <= 0)
        {
            return 0;
        }

        plan.Put(plan.Nights[bestNight], bestAt, task, bestSubs, bestReplaces == 1);
        return bestSubs;
    }

    /// <summary>More subs where there is time: in the blocks that there are, then in some new ones.</summary>
    private void Fill(Plan plan)
    {
        var turn = random.Next(1 << 20);
        foreach (var night in plan.Nights)
        {
            for (var i = 0; i < night.Count; i++)
            {
                var at = (i + turn) % night.Count;
                var (task, subs) = night[at];
                var left = problem.Tasks[task].Wanted - plan.Shot[task];
                if (left > 0 && night.Most(at, task, subs + left, 1) is var fits && fits > subs)
                {
                    plan.Resize(night, at, fits);
                }
            }
        }

        for (var k = 0; k < 3; k++)
        {
            var task = random.Next(problem.Tasks.Count);
            if (plan.Shot[task] < problem.Tasks[task].Wanted)
            {
                Put(plan, task, problem.Tasks[task].Wanted - plan.Shot[task], whole: false);
            }
        }
    }

    /// <summary>Orders of all nights with the subs that they amount to.</summary>
    private sealed class Plan(ScheduleProblem problem)
    {
        public NightOrder[] Nights { get; } =
        [.. Enumerable.Range(0, problem.Nights).Select(night => new NightOrder(problem, night))];

        public int[] Shot { get; } = new int[problem.Tasks.Count];

        public int Changes => Nights.Sum(night => night.Changes);

        public void CopyFrom(Plan other)
        {
            for (var i = 0; i < Nights.Length; i++)
            {
                Nights[i].CopyFrom(other.Nights[i]);
            }

            other.Shot.CopyTo(Shot, 0);
        }

        public void Remove(NightOrder night, int at, int count)
        {
            for (var i = at; i < at + count; i++)
            {
                Shot[night[i].Task] -= night[i].Subs;
            }

            night.RemoveRange(at, count);
            if (at > 0 && at < night.Count)
            {
                night.Join(at - 1);
            }
        }

        public void Resize(NightOrder night, int at, int subs)
        {
            Shot[night[at].Task] += subs - night[at].Subs;
            night.Resize(at, subs);
        }

        public void Put(NightOrder night, int at, int task, int subs, bool joins)
        {
            Shot[task] += subs;
            if (joins)
            {
                night.Resize(at, night[at].Subs + subs);
                return;
            }

            night.Insert(at, new(task, subs));
        }
    }
}
