namespace Framing.Nights;

/// <summary>What no plan of the nights can exceed.</summary>
/// <remarks>
/// <para>
/// A relaxation that is a flow: shooting may be cut into any pieces, and flows from tasks into the stretches of the nights in
/// which they have a window; no two things at once. A task of n subs takes at least as long as one block of n, since every
/// further block is entered by a change that takes no less than the dither and the look at the focus that it saves. Right
/// before a block stands at least its pause; right before a panel's first block what a change of panel takes beyond that; right
/// after a block what is lost since the next begins at a whole minute (<see cref="WholeMinutes"/>). Windows are made
/// longer by these, so that nothing has to be said of the first and the last block of a night.
/// </para>
/// <para>
/// Whatever a real plan does is such a flow, so that a share for which there is none cannot be reached. The most subs follow
/// from it exactly: flows into common stretches are a polymatroid, in which the cheapest sub may always be taken first.
/// </para>
/// </remarks>
internal sealed class ScheduleBound
{
    private const double MostPipes = 400_000.0;

    private readonly ScheduleProblem problem;
    private readonly LargestFlow flow;
    private readonly int[] panels;
    private readonly int[] panelOf;
    private readonly int[] most;

    /// <summary>For each task and number of subs the least time, its entry included.</summary>
    private readonly long[][] time;

    public ScheduleBound(ScheduleProblem problem)
    {
        this.problem = problem;
        panels = [.. problem.Tasks.Select(task => task.Panel).Distinct()];
        panelOf = [.. problem.Tasks.Select(task => Array.IndexOf(panels, task.Panel))];
        time = WholeMinutes.Lengths(problem);
        most = new int[time.Length];
        for (var i = 0; i < time.Length; i++)
        {
            most[i] = Alone(i);
            var pause = problem.Tasks[i].Cadence.Pause;
            time[i] = [.. time[i].Select(length => length > 0 ? length + pause : 0)];
        }

        var cells = Cells();
        var sources = problem.Tasks.Count + panels.Length;
        flow = new(2 + sources + cells.Count);
        for (var i = 0; i < sources; i++)
        {
            flow.Add(0, 2 + i, 0);
        }

        for (var c = 0; c < cells.Count; c++)
        {
            var node = 2 + sources + c;
            flow.Add(node, 1, cells[c].Length);
            foreach (var source in cells[c].Sources)
            {
                flow.Add(2 + source, node, cells[c].Length);
            }
        }

        Levels =
        [
            .. problem
                .Tasks.Where((_, i) => problem.CanBeShot[i])
                .SelectMany(task =>
                    Enumerable.Range(0, task.Wanted + 1).Select(n => n / (double)task.Wanted)
                )
                .Distinct()
                .Order(),
        ];
        if (Levels.Count == 0)
        {
            Levels = [1.0];
        }

        LeastFraction = Highest();
    }

    /// <summary>The least fractions that plans can have, from 0 to 1.</summary>
    public IReadOnlyList<double> Levels { get; }

    /// <summary>No plan has a higher least fraction.</summary>
    public double LeastFraction { get; }

    /// <summary>The subs of each task that a least fraction asks for.</summary>
    public int[] Needed(double fraction)
    {
        var needed = new int[problem.Tasks.Count];
        for (var i = 0; i < needed.Length; i++)
        {
            var wanted = problem.Tasks[i].Wanted;
            var n = problem.CanBeShot[i] ? (int)Math.Ceiling(fraction * wanted) : 0;

            // The product may round to the other side of a whole number.
            while (n > 0 && (n - 1) / (double)wanted >= fraction)
            {
                n--;
            }

            while (problem.CanBeShot[i] && n < wanted && n / (double)wanted < fraction)
            {
                n++;
            }

            needed[i] = n;
        }

        return needed;
    }

    /// <summary>No plan whose least fraction is at least this has more subs.</summary>
    public int MostSubs(double fraction)
    {
        var least = Needed(fraction);
        var steps = new List<(double Each, int Subs, int Task)>();
        for (var i = 0; i < least.Length; i++)
        {
            Hull(i, least[i], most[i], steps);
        }

        steps.Sort();
        var more = 0.0;
        lock (flow)
        {
            Fill(least);
            flow.Run();
            for (var i = 0; i < steps.Count; )
            {
                var each = steps[i].Each;
                for (; i < steps.Count && steps[i].Each <= each; i++)
                {
                    flow.Raise(2 * steps[i].Task, (long)Math.Ceiling(each * steps[i].Subs));
                }

                more += flow.Run() / each;
            }
        }

        return Math.Min(most.Sum(), least.Sum() + (int)Math.Floor(more + 1e-6));
    }

    private void Hull(int task, int least, int upTo, List<(double Each, int Subs, int Task)> steps)
    {
        for (var from = least; from < upTo; )
        {
            var (to, each) = (from + 1, double.PositiveInfinity);
            for (var n = from + 1; n <= upTo; n++)
            {
                var slope = (time[task][n] - time[task][from]) / (double)(n - from);
                if (slope <= each)
                {
                    (to, each) = (n, slope);
                }
            }

            steps.Add((each, to - from, task));
            from = to;
        }
    }

    /// <summary>The most subs that a task could get if it were alone.</summary>
    private int Alone(int task)
    {
        var shot = problem.Tasks[task];
        var sum = 0;
        foreach (var window in shot.Windows.SelectMany(night => night))
        {
            sum += shot.Cadence.MostWithin(window.To - window.From, shot.Wanted);
        }

        return problem.CanBeShot[task] ? Math.Min(sum, shot.Wanted) : 0;
    }

    private double Highest()
    {
        var (low, high) = (0, Levels.Count - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            if (CanFlow(Needed(Levels[middle])))
            {
                low = middle;
            }
            else
            {
                high = middle - 1;
            }
        }

        return Levels[low];
    }

    private bool CanFlow(int[] needed)
    {
        for (var i = 0; i < needed.Length; i++)
        {
            if (needed[i] > most[i])
            {
                return false;
            }
        }

        return Fill(needed) == flow.Run();
    }

    /// <summary>Fills the net with what numbers of subs take, and gives the sum.</summary>
    private long Fill(int[] subs)
    {
        flow.Empty();
        var sum = 0L;
        var entered = new bool[panels.Length];
        for (var i = 0; i < subs.Length; i++)
        {
            flow.Raise(2 * i, time[i][subs[i]]);
            sum += time[i][subs[i]];
            entered[panelOf[i]] |= subs[i] > 0;
        }

        for (var p = 0; p < panels.Length; p++)
        {
            if (entered[p])
            {
                flow.Raise(2 * (subs.Length + p), EntryBeyondPause(p));
                sum += EntryBeyondPause(p);
            }
        }

        return sum;
    }

    /// <summary>What entering a panel takes at least beyond the pause of the filter that comes first.</summary>
    private long EntryBeyondPause(int panel) =>
        Math.Max(
            0,
            problem.RepointMs
                - problem.Tasks.Where((_, i) => panelOf[i] == panel).Max(task => task.Cadence.Pause)
        );

    /// <summary>1, or for problems of many panels and nights a step of time that keeps the net small enough.</summary>
    private int Step()
    {
        var sources = problem.Tasks.Count + panels.Length;
        var cuts = 2.0 * problem.Tasks.Sum(task => task.Windows.Sum(night => night.Length));
        if (cuts * sources <= MostPipes)
        {
            return 1;
        }

        const double dayMs = 86_400_000.0;
        return (int)Math.Ceiling(dayMs * problem.Nights * sources / MostPipes);
    }

    /// <summary>Stretches with the tasks and, behind them, the panels that may use them; those used by the same ones are one.</summary>
    private List<(long Length, int[] Sources)> Cells()
    {
        var cells = new Dictionary<string, (long Length, int[] Sources)>(StringComparer.Ordinal);
        var step = Step();
        for (var night = 0; night < problem.Nights; night++)
        {
            var uses = new List<(int From, int To, int Source)>();
            for (var i = 0; i < problem.Tasks.Count; i++)
            {
                var cadence = problem.Tasks[i].Cadence;
                foreach (var window in problem.Tasks[i].Windows[night])
                {
                    var to = window.To + cadence.ReadoutMs + ScheduleProblem.MinuteMs;
                    uses.Add((window.From - cadence.Pause, to, i));
                    uses.Add(
                        (
                            window.From - Math.Max(problem.RepointMs, cadence.Pause),
                            to,
                            problem.Tasks.Count + panelOf[i]
                        )
                    );
                }
            }

            // Windows rounded outwards: what fits the real ones fits these.
            for (var i = 0; step > 1 && i < uses.Count; i++)
            {
                var (from, to, source) = uses[i];
                uses[i] = (
                    (int)Math.Floor(from / (double)step) * step,
                    (int)Math.Ceiling(to / (double)step) * step,
                    source
                );
            }

            var cuts = uses.SelectMany(use => (int[])[use.From, use.To])
                .Distinct()
                .Order()
                .ToList();
            for (var i = 1; i < cuts.Count; i++)
            {
                var (from, to) = (cuts[i - 1], cuts[i]);
                int[] sources =
                [
                    .. uses.Where(use => use.From <= from && to <= use.To)
                        .Select(use => use.Source)
                        .Distinct(),
                ];
                var key = string.Join(' ', sources);
                cells[key] = (cells.GetValueOrDefault(key).Length + to - from, sources);
            }
        }

        return [.. cells.Values.Where(cell => cell.Sources.Length > 0)];
    }
}
