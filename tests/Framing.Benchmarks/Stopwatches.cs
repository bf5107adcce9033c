using System.Diagnostics;

namespace Framing.Benchmarks;

/// <summary>Times work and prints what came out.</summary>
internal static class Stopwatches
{
    /// <summary>How long work runs before it counts, so that its code is compiled as well as it will be.</summary>
    private static readonly TimeSpan WarmUp = TimeSpan.FromSeconds(0.6);

    /// <summary>Runs work some times after runs that are not counted, and prints least, median and greatest time.</summary>
    /// <param name="label">What stands before the figures.</param>
    /// <param name="runs">How often, 1 or more.</param>
    /// <param name="work">What is timed.</param>
    /// <returns>The median, in milliseconds, and what the last run gave.</returns>
    public static (double Milliseconds, T Result) Time<T>(string label, int runs, Func<T> work)
    {
        var (_, median, result) = Times(label, runs, work);
        return (median, result);
    }

    /// <summary>The same, and the least time, which other work on the machine moves less.</summary>
    /// <returns>Least and median, in milliseconds, and what the last run gave.</returns>
    public static (double Least, double Median, T Result) Times<T>(
        string label,
        int runs,
        Func<T> work
    )
    {
        var result = work();
        for (var start = Stopwatch.GetTimestamp(); Stopwatch.GetElapsedTime(start) < WarmUp; )
        {
            result = work();
        }

        var times = new double[runs];
        for (var run = 0; run < runs; run++)
        {
            GC.Collect();
            var start = Stopwatch.GetTimestamp();
            result = work();
            times[run] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }

        Array.Sort(times);
        var median = times[runs / 2];
        Print(label, times[0], median, times[^1]);
        return (times[0], median, result);
    }

    /// <summary>One line of figures, in milliseconds.</summary>
    public static void Print(string label, double least, double median, double greatest) =>
        Console.WriteLine(
            FormattableString.Invariant(
                $"{label, -44} min {least, 11:0.0000}  median {median, 11:0.0000}  max {greatest, 11:0.0000}  ms"
            )
        );

    /// <summary>How many times as long the rival took.</summary>
    public static void Ratio(string label, double ours, double rival) =>
        Console.WriteLine(
            FormattableString.Invariant($"{label, -44} {rival / ours:0.00} times as fast")
        );
}
