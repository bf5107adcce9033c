namespace Framing.Nights.Tests.Schedules;

/// <summary>A small problem in plain numbers, as the tests make it and the brute force reads it.</summary>
internal sealed record SmallInstance(int Nights, int Repoint, SmallInstance.Job[] Jobs)
{
    /// <summary>All times in seconds; windows and airmasses for each night.</summary>
    public sealed record Job(
        int Panel,
        int Filter,
        int Wanted,
        int Sub,
        int Readout,
        int DitherEvery,
        int Dither,
        int FocusEvery,
        int Focus,
        (int From, int To)[][] Windows,
        double[][] Airmass
    );

    public static SmallInstance Random(int seed)
    {
        var random = new Random(seed);
        var nights = random.Next(1, 3);
        var minutes = nights == 1 ? random.Next(8, 15) : random.Next(6, 11);
        var panels = random.Next(1, 4);
        var filters = panels == 3 ? 1 : random.Next(1, 3);
        var subs = Enumerable.Range(0, filters).Select(_ => random.Next(50, 200)).ToArray();
        var dither = random.Next(0, 3);
        var focus = random.Next(0, 3);
        var jobs = new List<Job>();
        for (var panel = 0; panel < panels; panel++)
        {
            for (var filter = 0; filter < filters; filter++)
            {
                jobs.Add(
                    new(
                        panel,
                        filter,
                        random.Next(1, 4),
                        subs[filter],
                        random.Next(0, 6),
                        dither,
                        random.Next(0, 30),
                        focus,
                        random.Next(0, 80),
                        [.. Enumerable.Range(0, nights).Select(_ => Windows(random, minutes * 60))],
                        [.. Enumerable.Range(0, nights).Select(_ => Airmasses(random, minutes + 2))]
                    )
                );
            }
        }

        return new(nights, random.Next(0, 200), [.. jobs]);
    }

    public ScheduleProblem Problem() =>
        new(
            [
                .. Jobs.Select(job => new ScheduleTask(
                    job.Panel,
                    job.Filter,
                    job.Wanted,
                    new(
                        job.Sub * 1000,
                        job.Readout * 1000,
                        job.DitherEvery,
                        job.Dither * 1000,
                        job.FocusEvery,
                        job.Focus * 1000
                    ),
                    [
                        .. job.Windows.Select(night =>
                            night.Select(w => new TimeSpanMs(w.From * 1000, w.To * 1000)).ToArray()
                        ),
                    ],
                    job.Airmass
                )),
            ],
            Nights,
            Repoint * 1000
        );

    private static (int, int)[] Windows(Random random, int seconds)
    {
        if (random.Next(8) == 0)
        {
            return [];
        }

        var from = random.Next(0, seconds / 3);
        var to = random.Next(seconds / 2, seconds);
        if (random.Next(3) > 0)
        {
            return [(from, to)];
        }

        var gap = random.Next(from + 1, to - 1);
        return [(from, gap), (Math.Min(to - 1, gap + random.Next(1, 120)), to)];
    }

    private static double[] Airmasses(Random random, int count)
    {
        var (middle, bend) = (random.Next(-count, 2 * count), random.NextDouble() * 0.02);
        return
        [
            .. Enumerable.Range(0, count).Select(i => 1.0 + (bend * (i - middle) * (i - middle))),
        ];
    }
}
