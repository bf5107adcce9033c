namespace Framing.Nights;

/// <summary>Makes a plan better step by step until no small change helps.</summary>
internal sealed class PlanImprovement(ScheduleProblem problem, PlanOfOrders plan)
{
    private int most;

    private bool Enough => plan.Times.Work > most || plan is { Target: not null, Missing: 0 };

    /// <summary>Makes the plan better until no small change helps, its target is reached, or the work is done.</summary>
    /// <param name="work">The work to do at most, as <see cref="StartTimes.Work"/> counts it.</param>
    public void Run(int work)
    {
        most = plan.Times.Work + work;
        Fill();
        for (var round = 0; round < 40 && !Enough; round++)
        {
            var (before, missing) = (plan.Score, plan.Missing);
            Join();
            Swap();
            Move();
            Fill();
            Shift();
            Split();
            Trade();
            Fill();
            if (plan.Missing == missing && !plan.Score.IsBetterThan(before))
            {
                break;
            }
        }
    }

    /// <summary>More subs where there is time, first for those that have the smallest share: in blocks that there are, then in new ones.</summary>
    private void Fill()
    {
        var stuck = new HashSet<int>();
        while (!Enough)
        {
            var next = Enumerable
                .Range(0, problem.Tasks.Count)
                .Where(task => Wants(task) && !stuck.Contains(task))
                .OrderBy(Share)
                .ThenBy(task => problem.Tasks[task].Cadence.CycleMs)
                .FirstOrDefault(-1);
            if (next < 0)
            {
                break;
            }

            if (!Lengthen(next, 1))
            {
                stuck.Add(next);
            }
        }

        foreach (
            var task in Enumerable
                .Range(0, problem.Tasks.Count)
                .Where(Wants)
                .OrderBy(Share)
                .ToList()
        )
        {
            Add(task);
        }
    }

    private double Share(int task) => plan.Shot[task] / (double)problem.Tasks[task].Wanted;

    private bool Wants(int task) =>
        plan.Shot[task] < (plan.Target?[task] ?? problem.Tasks[task].Wanted);

    private bool Lengthen(int task, int by)
    {
        for (var night = 0; night < problem.Nights; night++)
        {
            for (var i = 0; i < plan.Nights[night].Count; i++)
            {
                if (
                    plan.Nights[night][i].Task == task
                    && plan.Try((night, With(plan.Nights[night], i, by)))
                )
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>A new block of a task wherever it brings more subs.</summary>
    private void Add(int task)
    {
        for (var night = 0; night < problem.Nights; night++)
        {
            for (var i = 0; i <= plan.Nights[night].Count && Wants(task); i++)
            {
                var left = problem.Tasks[task].Wanted - plan.Shot[task];
                for (var subs = left; subs > 0; subs -= Math.Max(1, subs / 4))
                {
                    var parts = plan.Nights[night].ToList();
                    parts.Insert(i, new(task, subs));
                    if (plan.Try((night, parts)))
                    {
                        break;
                    }
                }
            }
        }
    }

    /// <summary>All subs of a task into one of its blocks.</summary>
    private void Join()
    {
        ForEachPair(
            (night, i, other, j) =>
            {
                var (one, two) = (plan.Nights[night][i], plan.Nights[other][j]);
                if (one.Task != two.Task)
                {
                    return false;
                }

                return TryPair(night, other, i, j, two.Subs, -two.Subs)
                    || TryPair(night, other, i, j, -one.Subs, one.Subs);
            }
        );
    }

    /// <summary>Some subs from one block of a task to another.</summary>
    private void Shift()
    {
        ForEachPair(
            (night, i, other, j) =>
            {
                var (one, two) = (plan.Nights[night][i], plan.Nights[other][j]);
                if (one.Task != two.Task)
                {
                    return false;
                }

                for (var by = Math.Max(one.Subs, two.Subs) / 2; by > 0; by /= 2)
                {
                    if (
                        (by < two.Subs && TryPair(night, other, i, j, by, -by))
                        || (by < one.Subs && TryPair(night, other, i, j, -by, by))
                    )
                    {
                        return true;
                    }
                }

                return false;
            }
        );
    }

    private bool TryPair(int night, int other, int i, int j, int first, int second)
    {
        if (night == other)
        {
            var parts = With(plan.Nights[night], i, first);
            return plan.Try((night, With(parts, j, second)));
        }

        return plan.Try(
            (night, With(plan.Nights[night], i, first)),
            (other, With(plan.Nights[other], j, second))
        );
    }

    private void Swap()
    {
        ForEachPair(
            (night, i, other, j) =>
            {
                var (one, two) = (plan.Nights[night][i], plan.Nights[other][j]);
                if (one.Task == two.Task)
                {
                    return false;
                }

                var parts = plan.Nights[night].ToList();
                parts[i] = two;
                if (night == other)
                {
                    parts[j] = one;
                    return plan.Try((night, parts));
                }

                var others = plan.Nights[other].ToList();
                others[j] = one;
                return plan.Try((night, parts), (other, others));
            }
        );
    }

    /// <summary>A block to another place in the order, or into another night.</summary>
    private void Move()
    {
        for (var night = 0; night < problem.Nights; night++)
        {
            for (var i = 0; i < plan.Nights[night].Count; i++)
            {
                MoveOne(night, i);
            }
        }
    }

    private void MoveOne(int night, int i)
    {
        var block = plan.Nights[night][i];
        for (var other = 0; other < problem.Nights && !Enough; other++)
        {
            for (var j = 0; j <= plan.Nights[other].Count; j++)
            {
                var parts = plan.Nights[night].ToList();
                parts.RemoveAt(i);
                if (other == night)
                {
                    if (j >= plan.Nights[night].Count || j == i)
                    {
                        continue;
                    }

                    parts.Insert(j, block);
                    if (plan.Try((night, parts)))
                    {
                        return;
                    }

                    continue;
                }

                var others = plan.Nights[other].ToList();
                others.Insert(j, block);
                if (plan.Try((night, parts), (other, others)))
                {
                    return;
                }
            }
        }
    }

    /// <summary>A part of a block to another place: around a gap in a window, or into a night with time to spare.</summary>
    private void Split()
    {
        for (var night = 0; night < problem.Nights; night++)
        {
            for (var i = 0; i < plan.Nights[night].Count && !Enough; i++)
            {
                SplitOne(night, i);
            }
        }
    }

    private void SplitOne(int night, int i)
    {
        var block = plan.Nights[night][i];
        for (var by = block.Subs / 2; by > 0; by /= 2)
        {
            for (var other = 0; other < problem.Nights; other++)
            {
                for (var j = 0; j <= plan.Nights[other].Count; j++)
                {
                    var parts = With(plan.Nights[night], i, -by);
                    var others = other == night ? parts : [.. plan.Nights[other]];
                    others.Insert(j, block with { Subs = by });
                    if (
                        other == night
                            ? plan.Try((night, others))
                            : plan.Try((night, parts), (other, others))
                    )
                    {
                        return;
                    }
                }
            }
        }
    }

    /// <summary>Fewer subs of one block for more of another task.</summary>
    private void Trade()
    {
        foreach (
            var task in Enumerable
                .Range(0, problem.Tasks.Count)
                .Where(Wants)
                .OrderBy(Share)
                .ToList()
        )
        {
            for (var night = 0; night < problem.Nights; night++)
            {
                for (var i = 0; i < plan.Nights[night].Count && Wants(task) && !Enough; i++)
                {
                    if (plan.Nights[night][i].Task != task)
                    {
                        TradeOne(task, night, i);
                    }
                }
            }
        }
    }

    private void TradeOne(int task, int night, int i)
    {
        var given = plan.Nights[night][i].Subs;
        for (
            var less = 1;
            less <= given;
            less = less == given ? given + 1 : Math.Min(given, less * 2)
        )
        {
            var parts = With(plan.Nights[night], i, -less);
            for (var j = 0; j <= parts.Count; j++)
            {
                var left = problem.Tasks[task].Wanted - plan.Shot[task];
                for (var more = less; more <= Math.Min(left, less + 1); more++)
                {
                    var others = parts.ToList();
                    if (j < parts.Count && parts[j].Task == task)
                    {
                        others[j] = parts[j] with { Subs = parts[j].Subs + more };
                    }
                    else
                    {
                        others.Insert(j, new(task, more));
                    }

                    if (plan.Try((night, others)))
                    {
                        return;
                    }
                }
            }
        }
    }

    private void ForEachPair(Func<int, int, int, int, bool> use)
    {
        for (var night = 0; night < problem.Nights; night++)
        {
            for (var i = 0; i < plan.Nights[night].Count; i++)
            {
                for (var other = night; other < problem.Nights; other++)
                {
                    for (
                        var j = other == night ? i + 1 : 0;
                        j < plan.Nights[other].Count && i < plan.Nights[night].Count && !Enough;
                        j++
                    )
                    {
                        use(night, i, other, j);
                    }
                }
            }
        }
    }

    private static List<BlockPart> With(IReadOnlyList<BlockPart> parts, int index, int more)
    {
        var changed = parts.ToList();
        changed[index] = changed[index] with { Subs = changed[index].Subs + more };
        return changed;
    }
}
