using Framing.Sky;

namespace Framing.Nights;

/// <summary>Plans one or several nights: when each panel can be shot, and what is shot when.</summary>
/// <remarks>
/// <para>
/// The best plan is, in this order: the largest least fraction of the wanted subs, the most subs, the fewest changes of
/// panel, the least summed airmass. No panel gets more than is wanted. What cannot be shot in any night does not count in
/// the least fraction. A pure function: the same request gives the same plan.
/// </para>
/// <para>
/// Where the night never becomes astronomically dark, the time below -12° is taken. Blocks begin at whole minutes UTC.
/// </para>
/// </remarks>
public static class NightsStep
{
    /// <summary>Plans the nights.</summary>
    /// <param name="request">Everything that the plan depends on.</param>
    /// <returns>The plan.</returns>
    public static PlannedNights Plan(NightsRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        var nights = Enumerable
            .Range(0, request.Nights)
            .Select(i => new NightMaker(request, request.Evening.AddDays(i)))
            .ToArray();
        var problem = Problem(request, nights);
        var (schedule, bound, isBest) = Scheduler.Solve(problem);
        return new()
        {
            Request = request,
            Nights = [.. nights.Select((night, i) => night.With(schedule.Nights[i], problem, i))],
            Tallies =
            [
                .. problem.Tasks.Select(
                    (task, i) =>
                        new PanelTally(
                            task.Panel + 1,
                            request.Filters[task.Filter],
                            task.Wanted,
                            schedule.Shot[i],
                            problem.CanBeShot[i]
                        )
                ),
            ],
            LeastFraction = schedule.Score.LeastFraction,
            LeastFractionBound = bound.LeastFraction,
            Subs = schedule.Score.Subs,
            SubsBound = isBest ? schedule.Score.Subs : bound.MostSubs(schedule.Score.LeastFraction),
            IsBest = isBest,
        };
    }

    private static ScheduleProblem Problem(NightsRequest request, NightMaker[] nights)
    {
        var tasks = new List<ScheduleTask>();
        var cadences = request.Filters.Select(filter => Cadence(request, filter)).ToArray();
        for (var panel = 0; panel < request.Panels.Count; panel++)
        {
            var airmass = nights.Select(night => night.Airmass(panel)).ToArray();
            for (var filter = 0; filter < request.Filters.Count; filter++)
            {
                tasks.Add(
                    new(
                        panel,
                        filter,
                        request.SubsToShoot(request.Filters[filter]),
                        cadences[filter],
                        [.. nights.Select(night => night.Windows(panel, filter))],
                        airmass
                    )
                );
            }
        }

        return new(tasks, nights.Length, Ms(request.PanelChange));
    }

    private static SubCadence Cadence(NightsRequest request, NightFilter filter)
    {
        var cycle = filter.Sub + filter.Readout;
        var focusEvery =
            request.FocusEvery > TimeSpan.Zero
                ? (int)Math.Clamp(Math.Floor(request.FocusEvery / cycle), 1.0, 1e6)
                : 0;
        return new(
            Math.Max(1, Ms(filter.Sub)),
            Ms(filter.Readout),
            filter.DitherEvery,
            Ms(filter.DitherTime),
            focusEvery,
            Ms(request.Focus)
        );
    }

    private static int Ms(TimeSpan time) => (int)Math.Round(time.TotalMilliseconds);
}
