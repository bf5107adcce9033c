namespace Framing.Nights;

/// <summary>Makes the plan of the nights.</summary>
/// <remarks>
/// Small problems are solved for certain (<see cref="ExactSearch"/>). For others the highest least fraction is sought for
/// which an order of shooting is found (<see cref="RuinAndRecreate"/>), then more subs and fewer changes, then less airmass
/// (<see cref="PlanImprovement"/>). Everything is counted, nothing timed: the same problem gives the same plan on every
/// machine.
/// </remarks>
internal static class Scheduler
{
    private const int ExactSteps = 400_000;
    private const int Sketch = 60;
    private const int Climb = 2500;
    private const int Rounds = 5000;
    private const int Polish = 25_000;
    private const int Searches = 2;

    /// <summary>Up to as many tasks all rounds are gone through; with more of them, which take longer each, fewer.</summary>
    private const double FullEffort = 160.0;

    public static (Schedule Plan, ScheduleBound Bound, bool IsBest) Solve(ScheduleProblem problem)
    {
        var bound = new ScheduleBound(problem);
        var exact = new ExactSearch(problem).Run(ExactSteps);
        return exact is null ? (Search(problem, bound), bound, false) : (exact, bound, true);
    }

    /// <summary>The plan without the certainty, as for large problems.</summary>
    internal static Schedule Search(ScheduleProblem problem, ScheduleBound bound)
    {
        // Two searches side by side, for two cores; where they are equally good the first counts.
        var found = new Schedule[Searches];
        Parallel.For(
            0,
            Searches,
            i =>
            {
                var orders = Orders(problem, bound, seed: i + 1);
                var plan = new PlanOfOrders(problem, new(problem), orders);
                new PlanImprovement(problem, plan).Run(Polish);
                plan.Join();
                found[i] = plan.Place();
            }
        );
        return Array.Find(
            found,
            plan => !Array.Exists(found, other => other.Score.IsBetterThan(plan.Score))
        )!;
    }

    private static IReadOnlyList<BlockPart>[] Orders(
        ScheduleProblem problem,
        ScheduleBound bound,
        int seed
    )
    {
        var search = new RuinAndRecreate(problem, seed);
        var part = Math.Clamp(FullEffort / problem.Tasks.Count, 0.01, 1.0);
        var top = 0;
        while (top + 1 < bound.Levels.Count && bound.Levels[top + 1] <= bound.LeastFraction)
        {
            top++;
        }

        // A sketch finds a level that is sure, then it goes up by single steps.
        var (low, high) = (0, top);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            var sketch = new RuinAndRecreate(problem, seed);
            if (sketch.Reach(bound.Needed(bound.Levels[middle]), Sketch))
            {
                search = sketch;
                low = middle;
            }
            else
            {
                high = middle - 1;
            }
        }

        while (low < top && search.Reach(bound.Needed(bound.Levels[low + 1]), (int)(Climb * part)))
        {
            low++;
        }

        search.Improve((int)(Rounds * part), bound.MostSubs(bound.Levels[low]));
        return search.Orders;
    }
}
