namespace Framing.Nights;

/// <summary>For each night the blocks in shooting order.</summary>
internal sealed class Schedule
{
    public Schedule(ScheduleProblem problem, IReadOnlyList<IReadOnlyList<ScheduledBlock>> nights)
    {
        Nights = nights;
        var shot = new int[problem.Tasks.Count];
        var (changes, airmass) = (0, 0.0);
        for (var night = 0; night < nights.Count; night++)
        {
            var before = -1;
            foreach (var block in nights[night])
            {
                var task = problem.Tasks[block.Task];
                shot[block.Task] += block.Subs;
                airmass += task.Airmass(night, block.Minute, block.Subs);
                changes += before >= 0 && before != task.Panel ? 1 : 0;
                before = task.Panel;
            }
        }

        Shot = shot;
        Score = new(problem.LeastFraction(shot), shot.Sum(), changes, airmass);
    }

    public IReadOnlyList<IReadOnlyList<ScheduledBlock>> Nights { get; }

    /// <summary>The subs of each task.</summary>
    public IReadOnlyList<int> Shot { get; }

    public ScheduleScore Score { get; }

    public static Schedule Empty(ScheduleProblem problem) =>
        new(problem, [.. Enumerable.Repeat(Array.Empty<ScheduledBlock>(), problem.Nights)]);
}
