namespace Framing.Nights;

/// <summary>What is to be shot, when each part of it can be, and what every change costs.</summary>
/// <remarks>
/// Blocks begin at whole minutes, so that the plan can be followed by the clock. From the end of a block to the begin of the
/// next in the same night there is a change: to another panel <see cref="RepointMs"/>, else a look at the focus and a dither
/// (<see cref="SubCadence.Pause"/> of the next block), and never less than this. The first block of a night needs none.
/// </remarks>
internal sealed class ScheduleProblem
{
    public const int MinuteMs = 60_000;

    public ScheduleProblem(IReadOnlyList<ScheduleTask> tasks, int nights, int repointMs)
    {
        (Tasks, Nights, RepointMs) = (tasks, nights, repointMs);
        CanBeShot = [.. tasks.Select(task => task.CanBeShot)];
    }

    public IReadOnlyList<ScheduleTask> Tasks { get; }

    public int Nights { get; }

    public int RepointMs { get; }

    /// <summary>For each task whether it can be shot at all; the others do not count in the least fraction.</summary>
    public IReadOnlyList<bool> CanBeShot { get; }

    /// <summary>The time from the end of a block to the begin of the next.</summary>
    public int ChangeMs(ScheduleTask before, ScheduleTask next) =>
        before.Panel == next.Panel ? next.Cadence.Pause : Math.Max(RepointMs, next.Cadence.Pause);

    /// <summary>Whole minutes from the begin of a block to the earliest begin of the next.</summary>
    public int LagMinutes(int before, int subs, int next)
    {
        var ms = Tasks[before].Cadence.Length(subs) + ChangeMs(Tasks[before], Tasks[next]);
        return (ms + MinuteMs - 1) / MinuteMs;
    }

    /// <summary>The smallest share of its wanted subs that any task gets which can be shot at all; 1 without such tasks.</summary>
    public double LeastFraction(IReadOnlyList<int> shot)
    {
        var least = 1.0;
        for (var i = 0; i < Tasks.Count; i++)
        {
            if (CanBeShot[i])
            {
                least = Math.Min(least, shot[i] / (double)Tasks[i].Wanted);
            }
        }

        return least;
    }
}
