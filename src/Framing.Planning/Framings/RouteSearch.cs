namespace Framing.Planning;

/// <summary>Finds an order of stops whose steps together cost little; a step back can cost more than the step there.</summary>
internal static class RouteSearch
{
    /// <summary>Costs that differ by less are the same: rounding.</summary>
    private const double Rounding = 1e-9;

    /// <summary>Stops, about, from which the cheapest next one is followed.</summary>
    private const int Starts = 16;

    /// <summary>The cheapest order of all: for every set of stops and its last one the cheapest way (Held and Karp 1962, J. SIAM 10, 196).</summary>
    /// <param name="count">The number of stops.</param>
    /// <param name="costs">From the first index to the second.</param>
    public static int[] Cheapest(int count, Func<int, int, double> costs)
    {
        if (count == 0)
        {
            return [];
        }

        var sets = 1 << count;
        var best = new double[sets, count];
        var before = new int[sets, count];
        for (var set = 1; set < sets; set++)
        {
            for (var last = 0; last < count; last++)
            {
                var rest = set & ~(1 << last);
                (best[set, last], before[set, last]) = (
                    rest == 0 && set != 0 ? 0.0 : double.PositiveInfinity,
                    -1
                );
                if ((set & (1 << last)) == 0)
                {
                    best[set, last] = double.PositiveInfinity;
                    continue;
                }

                for (var from = 0; from < count; from++)
                {
                    if ((rest & (1 << from)) == 0)
                    {
                        continue;
                    }

                    var cost = best[rest, from] + costs(from, last);
                    if (cost < best[set, last] - Rounding)
                    {
                        (best[set, last], before[set, last]) = (cost, from);
                    }
                }
            }
        }

        var all = sets - 1;
        var end = 0;
        for (var last = 1; last < count; last++)
        {
            if (best[all, last] < best[all, end] - Rounding)
            {
                end = last;
            }
        }

        var order = new int[count];
        for (var i = count - 1; i >= 0; i--)
        {
            order[i] = end;
            var rest = all & ~(1 << end);
            end = before[all, end];
            all = rest;
        }

        return order;
    }

    /// <summary>A good order: the best of some, and of those that go on to the cheapest stop, improved.</summary>
    /// <param name="count">The number of stops.</param>
    /// <param name="costs">From the first index to the second.</param>
    /// <param name="starts">Orders to begin from.</param>
    /// <param name="longestRun">Runs of up to so many stops are put elsewhere where that is cheaper; 0 to leave the order as it is.</param>
    public static int[] Good(
        int count,
        Func<int, int, double> costs,
        IEnumerable<int[]> starts,
        int longestRun
    )
    {
        var best = starts
            .Concat(longestRun > 0 ? Greedy(count, costs) : [])
            .Select(order => (Order: order, Cost: Cost(costs, order)))
            .Aggregate((one, other) => other.Cost < one.Cost - Rounding ? other : one)
            .Order;
        List<int> improved = [.. best];
        while (longestRun > 0 && Improve(costs, improved, longestRun)) { }
        return [.. improved];
    }

    /// <summary>What the steps of an order cost together.</summary>
    public static double Cost(Func<int, int, double> costs, IReadOnlyList<int> order)
    {
        var sum = 0.0;
        for (var i = 1; i < order.Count; i++)
        {
            sum += costs(order[i - 1], order[i]);
        }

        return sum;
    }

    private static IEnumerable<int[]> Greedy(int count, Func<int, int, double> costs)
    {
        for (var start = 0; start < count; start += Math.Max(1, count / Starts))
        {
            List<int> order = [start];
            HashSet<int> left = [.. Enumerable.Range(0, count)];
            left.Remove(start);
            while (left.Count > 0)
            {
                var from = order[^1];
                var next = left.MinBy(to => (costs(from, to), to));
                left.Remove(next);
                order.Add(next);
            }

            yield return [.. order];
        }
    }

    /// <summary>Takes out the run whose new place saves most; false when none saves anything.</summary>
    private static bool Improve(Func<int, int, double> costs, List<int> order, int longestRun)
    {
        var (gain, run, start, place) = (Rounding, 0, 0, 0);
        for (var length = 1; length <= longestRun; length++)
        {
            for (var from = 0; from + length <= order.Count; from++)
            {
                var (first, last) = (order[from], order[from + length - 1]);
                var (left, right) = (At(from - 1), At(from + length));
                var saved = Step(left, first) + Step(last, right) - Step(left, right);
                for (var to = 0; to <= order.Count; to++)
                {
                    if (to >= from && to <= from + length)
                    {
                        continue;
                    }

                    var (before, after) = (At(to - 1), At(to));
                    var more = Step(before, first) + Step(last, after) - Step(before, after);
                    if (saved - more > gain)
                    {
                        (gain, run, start, place) = (saved - more, length, from, to);
                    }
                }
            }
        }

        if (run == 0)
        {
            return false;
        }

        var moved = order.GetRange(start, run);
        order.RemoveRange(start, run);
        order.InsertRange(place > start ? place - run : place, moved);
        return true;

        int At(int index) => index >= 0 && index < order.Count ? order[index] : -1;

        double Step(int from, int to) => from < 0 || to < 0 ? 0.0 : costs(from, to);
    }
}
