namespace Framing.Nights;

/// <summary>The subs wanted of one panel through one filter, and when they can be shot.</summary>
internal sealed class ScheduleTask
{
    private const int Minute = ScheduleProblem.MinuteMs;

    private readonly int[][] mostFrom;
    private readonly int[] lastStart;
    private readonly double[][] airmass;

    /// <summary>Makes a task.</summary>
    /// <param name="panel">The panel, from 0.</param>
    /// <param name="filter">The filter, from 0.</param>
    /// <param name="wanted">The subs to shoot, 1 or more, those included that are expected to be lost.</param>
    /// <param name="cadence">How they follow each other.</param>
    /// <param name="windows">For each night the stretches in which exposures may lie, by time, apart from each other.</param>
    /// <param name="airmass">For each night the airmass at every whole minute; 1 is taken past its end.</param>
    public ScheduleTask(
        int panel,
        int filter,
        int wanted,
        SubCadence cadence,
        TimeSpanMs[][] windows,
        double[][] airmass
    )
    {
        (Panel, Filter, Wanted, Cadence, Windows) = (panel, filter, wanted, cadence, windows);
        this.airmass = airmass;
        mostFrom = [.. windows.Select(Fill)];
        lastStart = [.. mostFrom.Select(night => Array.FindLastIndex(night, most => most > 0))];
        OpenMs = windows.Sum(night => night.Sum(window => (long)window.To - window.From));
    }

    public int Panel { get; }

    public int Filter { get; }

    public int Wanted { get; }

    public SubCadence Cadence { get; }

    public TimeSpanMs[][] Windows { get; }

    /// <summary>All windows together, milliseconds.</summary>
    public long OpenMs { get; }

    /// <summary>True when at least one sub can be shot.</summary>
    public bool CanBeShot => mostFrom.Any(night => Array.Exists(night, most => most > 0));

    /// <summary>The most subs in a block that starts at a whole minute of a night.</summary>
    public int MostFrom(int night, int minute) =>
        (uint)minute < (uint)mostFrom[night].Length ? mostFrom[night][minute] : 0;

    /// <summary>The first minute from one on at which a block of some subs can start; -1 for none.</summary>
    public int EarliestStart(int night, int minute, int subs)
    {
        var length = Cadence.Exposed(subs);
        foreach (var window in Windows[night])
        {
            var start = Math.Max(minute, CeilingMinute(window.From));
            if (((long)start * Minute) + length <= window.To)
            {
                return start;
            }
        }

        return -1;
    }

    /// <summary>The last minute up to one at which a block of some subs can start; -1 for none.</summary>
    public int LatestStart(int night, int minute, int subs)
    {
        var length = Cadence.Exposed(subs);
        var windows = Windows[night];
        for (var i = windows.Length - 1; i >= 0; i--)
        {
            var room = windows[i].To - length;
            if (room < 0)
            {
                continue;
            }

            var start = Math.Min(minute, room / Minute);
            if (start >= CeilingMinute(windows[i].From))
            {
                return start;
            }
        }

        return -1;
    }

    /// <summary>The last minute at which a sub can start; -1 for none.</summary>
    public int LastStart(int night) => lastStart[night];

    /// <summary>The sum of the airmasses in the middle of the subs of a block.</summary>
    public double Airmass(int night, int minute, int subs)
    {
        var sum = 0.0;
        for (var i = 0; i < subs; i++)
        {
            sum += AirmassAt(
                night,
                ((long)minute * Minute) + Cadence.Offset(i) + (Cadence.SubMs / 2)
            );
        }

        return sum;
    }

    private double AirmassAt(int night, long ms)
    {
        var minutes = airmass[night];
        var whole = (int)(ms / Minute);
        if (whole + 1 >= minutes.Length)
        {
            return minutes.Length > 0 ? minutes[^1] : 1.0;
        }

        var part = (ms % Minute) / (double)Minute;
        return minutes[whole] + (part * (minutes[whole + 1] - minutes[whole]));
    }

    private static int CeilingMinute(int ms) => (ms + Minute - 1) / Minute;

    private int[] Fill(TimeSpanMs[] windows)
    {
        var most = new int[windows.Length == 0 ? 0 : (windows[^1].To / Minute) + 1];
        foreach (var window in windows)
        {
            for (
                var minute = CeilingMinute(window.From);
                (long)minute * Minute < window.To;
                minute++
            )
            {
                most[minute] = Cadence.MostWithin(window.To - ((long)minute * Minute), Wanted);
            }
        }

        return most;
    }
}
