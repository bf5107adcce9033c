namespace Framing.Nights;

/// <summary>Finds when a smooth height goes through zero, grazing passes included.</summary>
/// <remarks>
/// The height is sampled every ten minutes unless another step is given. Where three samples turn without changing sign, the turning point between them is
/// sought, so that a short stretch above or below is not missed. Crossings are halved to 0.05 s.
/// </remarks>
internal static class Crossings
{
    private static readonly TimeSpan Step = TimeSpan.FromMinutes(10.0);

    /// <summary>How far outside of the stretch the height is asked for at most.</summary>
    public static readonly TimeSpan Room = 2.0 * Step;

    private static readonly TimeSpan Fine = TimeSpan.FromSeconds(0.05);

    /// <summary>The stretches in which the height is above zero.</summary>
    public static IReadOnlyList<UtcInterval> Above(
        Func<DateTime, double> height,
        DateTime start,
        DateTime end,
        TimeSpan? step = null
    )
    {
        var intervals = new List<UtcInterval>();
        DateTime? open = null;
        var openBefore = false;
        if (height(start) > 0.0)
        {
            (open, openBefore) = (start, true);
        }

        foreach (var (time, rising) in Between(height, start, end, step))
        {
            if (rising)
            {
                (open, openBefore) = (time, false);
            }
            else if (open is { } from)
            {
                intervals.Add(new(from, time, openBefore, false));
                open = null;
            }
        }

        if (open is { } last)
        {
            intervals.Add(new(last, end, openBefore, true));
        }

        return intervals;
    }

    /// <summary>All crossings after the start and up to the end, by time; upward and downward ones take turns.</summary>
    public static IReadOnlyList<(DateTime Time, bool Rising)> Between(
        Func<DateTime, double> height,
        DateTime start,
        DateTime end,
        TimeSpan? step = null
    )
    {
        var found = new List<(DateTime, bool)>();
        foreach (var (left, right) in Pieces(height, start, end, step))
        {
            if (left.Up != right.Up)
            {
                found.Add((Halved(height, left.Time, right.Time, left.Up), right.Up));
            }
        }

        return found;
    }

    /// <summary>The lowest and the highest value in a stretch.</summary>
    public static (double Lowest, double Highest) Extremes(
        Func<DateTime, double> height,
        DateTime start,
        DateTime end
    )
    {
        var (lowest, highest) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var sample in Samples(height, start, end, always: true, step: null))
        {
            lowest = Math.Min(lowest, sample.Value);
            highest = Math.Max(highest, sample.Value);
        }

        return (lowest, highest);
    }

    private static IEnumerable<(Sample Left, Sample Right)> Pieces(
        Func<DateTime, double> height,
        DateTime start,
        DateTime end,
        TimeSpan? step
    )
    {
        Sample? before = null;
        foreach (var sample in Samples(height, start, end, always: false, step))
        {
            if (before is { } left)
            {
                yield return (left, sample);
            }

            before = sample;
        }
    }

    /// <summary>Samples from start to end by time, with the turning points that matter among them.</summary>
    private static IEnumerable<Sample> Samples(
        Func<DateTime, double> height,
        DateTime start,
        DateTime end,
        bool always,
        TimeSpan? step
    )
    {
        var count = Math.Max(1, (int)Math.Ceiling((end - start) / (step ?? Step)));
        var apart = (end - start) / count;

        // One step more at both ends shows a turning point in the first or last piece.
        var values = new Sample[count + 3];
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = Take(height, i == count + 1 ? end : start + (apart * (i - 1)));
        }

        for (var i = 1; i <= count + 1; i++)
        {
            var turn = Turn(height, values[i - 1], values[i], values[i + 1], always);
            if (turn is { } early && early.Time < values[i].Time && early.Time > start)
            {
                yield return early;
            }

            yield return values[i];
            if (turn is { } late && late.Time > values[i].Time && late.Time < end)
            {
                yield return late;
            }
        }
    }

    private static Sample? Turn(
        Func<DateTime, double> height,
        Sample left,
        Sample middle,
        Sample right,
        bool always
    )
    {
        var peak = middle.Value >= left.Value && middle.Value >= right.Value;
        var pit = middle.Value <= left.Value && middle.Value <= right.Value;
        if (peak == pit || (!always && middle.Up == peak))
        {
            return null;
        }

        var sign = peak ? 1.0 : -1.0;
        var (low, high) = (left.Time, right.Time);
        while (high - low > Fine)
        {
            var third = (high - low) / 3.0;
            var (first, second) = (low + third, high - third);
            if (sign * height(first) < sign * height(second))
            {
                low = first;
            }
            else
            {
                high = second;
            }
        }

        return Take(height, low + ((high - low) / 2.0));
    }

    private static DateTime Halved(
        Func<DateTime, double> height,
        DateTime low,
        DateTime high,
        bool lowUp
    )
    {
        while (high - low > Fine)
        {
            var middle = low + ((high - low) / 2.0);
            if (height(middle) > 0.0 == lowUp)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return low + ((high - low) / 2.0);
    }

    private static Sample Take(Func<DateTime, double> height, DateTime time) =>
        new(time, height(time));

    private readonly record struct Sample(DateTime Time, double Value)
    {
        public bool Up => Value > 0.0;
    }
}
