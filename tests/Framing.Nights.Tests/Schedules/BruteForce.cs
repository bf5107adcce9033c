namespace Framing.Nights.Tests.Schedules;

/// <summary>Every plan of a small instance, one after another. Shares no code with the program.</summary>
internal sealed class BruteForce(SmallInstance instance)
{
    /// <summary>Least fraction, subs, changes and airmass of the best plan.</summary>
    public (double Fraction, int Subs, int Changes, double Airmass) Best()
    {
        // Nights hang together by the numbers of subs alone.
        var all = new Dictionary<string, (int[] Shot, int Changes, double Airmass)>
        {
            [""] = (new int[instance.Jobs.Length], 0, 0.0),
        };
        for (var night = 0; night < instance.Nights; night++)
        {
            var plans = new Dictionary<string, (int[] Shot, int Changes, double Airmass)>();
            Extend(night, null, 0, new int[instance.Jobs.Length], 0, 0.0, plans);
            var next = new Dictionary<string, (int[] Shot, int Changes, double Airmass)>();
            foreach (var before in all.Values)
            {
                foreach (var plan in plans.Values)
                {
                    var shot = before.Shot.Zip(plan.Shot, (a, b) => a + b).ToArray();
                    if (shot.Where((n, i) => n > instance.Jobs[i].Wanted).Any())
                    {
                        continue;
                    }

                    Keep(next, shot, before.Changes + plan.Changes, before.Airmass + plan.Airmass);
                }
            }

            all = next;
        }

        return all
            .Values.Select(plan =>
                (Fraction(plan.Shot), plan.Shot.Sum(), plan.Changes, plan.Airmass)
            )
            .OrderByDescending(plan => plan.Item1)
            .ThenByDescending(plan => plan.Item2)
            .ThenBy(plan => plan.Changes)
            .ThenBy(plan => plan.Airmass)
            .First();
    }

    private double Fraction(int[] shot)
    {
        var least = 1.0;
        for (var i = 0; i < shot.Length; i++)
        {
            var job = instance.Jobs[i];
            if (Enumerable.Range(0, instance.Nights).Any(night => CanStart(job, night)))
            {
                least = Math.Min(least, (double)shot[i] / job.Wanted);
            }
        }

        return least;
    }

    private static bool CanStart(SmallInstance.Job job, int night) =>
        Enumerable.Range(0, 60).Any(minute => Holds(job, night, minute * 60, 1));

    /// <summary>True when every exposure of the block lies in one and the same window.</summary>
    private static bool Holds(SmallInstance.Job job, int night, int start, int subs) =>
        Array.Exists(
            job.Windows[night],
            window =>
                Begins(job, subs)
                    .All(begin =>
                        start + begin >= window.From && start + begin + job.Sub <= window.To
                    )
        );

    private static List<int> Begins(SmallInstance.Job job, int subs)
    {
        var begins = new List<int>();
        var clock = 0;
        for (var i = 0; i < subs; i++)
        {
            if (i > 0)
            {
                clock += job.Sub + job.Readout;
                clock += job.DitherEvery > 0 && i % job.DitherEvery == 0 ? job.Dither : 0;
                clock += job.FocusEvery > 0 && i % job.FocusEvery == 0 ? job.Focus : 0;
            }

            begins.Add(clock);
        }

        return begins;
    }

    private void Extend(
        int night,
        SmallInstance.Job? last,
        int end,
        int[] shot,
        int changes,
        double airmass,
        Dictionary<string, (int[] Shot, int Changes, double Airmass)> plans
    )
    {
        Keep(plans, shot, changes, airmass);
        for (var i = 0; i < instance.Jobs.Length; i++)
        {
            var job = instance.Jobs[i];
            var pause =
                (job.DitherEvery > 0 ? job.Dither : 0) + (job.FocusEvery > 0 ? job.Focus : 0);
            var change =
                last is null ? 0
                : last.Panel == job.Panel ? pause
                : Math.Max(pause, instance.Repoint);
            for (var minute = 0; minute < 40; minute++)
            {
                for (var subs = 1; shot[i] + subs <= job.Wanted; subs++)
                {
                    if (minute * 60 < end + change || !Holds(job, night, minute * 60, subs))
                    {
                        continue;
                    }

                    var begins = Begins(job, subs);
                    var more = (int[])shot.Clone();
                    more[i] += subs;
                    Extend(
                        night,
                        job,
                        (minute * 60) + begins[^1] + job.Sub + job.Readout,
                        more,
                        changes + (last is not null && last.Panel != job.Panel ? 1 : 0),
                        airmass
                            + begins.Sum(begin =>
                                Airmass(job.Airmass[night], (minute * 60) + begin + (job.Sub / 2.0))
                            ),
                        plans
                    );
                }
            }
        }
    }

    private static double Airmass(double[] minutes, double seconds)
    {
        var whole = (int)Math.Floor(seconds / 60.0);
        var part = (seconds / 60.0) - whole;
        return (minutes[whole] * (1.0 - part)) + (minutes[whole + 1] * part);
    }

    private static void Keep(
        Dictionary<string, (int[] Shot, int Changes, double Airmass)> plans,
        int[] shot,
        int changes,
        double airmass
    )
    {
        var key = string.Join(",", shot);
        if (
            !plans.TryGetValue(key, out var other)
            || changes < other.Changes
            || (changes == other.Changes && airmass < other.Airmass)
        )
        {
            plans[key] = (shot, changes, airmass);
        }
    }
}
