namespace Framing.Nights.Tests;

/// <summary>Compares found stretches with the crossings that a judge found at one-minute steps.</summary>
internal static class Agreement
{
    /// <summary>
    /// At each of the judge's crossings the height found here is within the tolerance of the threshold, every crossing found
    /// here is one of the judge's, and none is missing. Pairs of crossings whose height between them stays within the
    /// tolerance may be found by one side alone.
    /// </summary>
    /// <returns>How many crossings were compared.</returns>
    public static int Check(
        IReadOnlyList<UtcInterval> above,
        bool startsAbove,
        IReadOnlyList<DateTime> expected,
        Func<DateTime, double> height,
        double tolerance
    )
    {
        var found = new List<DateTime>();
        foreach (var interval in above)
        {
            Assert.True(interval.Start < interval.End);
            if (!interval.HeldBefore)
            {
                found.Add(interval.Start);
            }

            if (!interval.HoldsAfter)
            {
                found.Add(interval.End);
            }
        }

        Assert.Equal(startsAbove, above.Count > 0 && above[0].HeldBefore);
        foreach (var time in expected)
        {
            Assert.InRange(Math.Abs(height(time)), 0.0, tolerance);
        }

        if (found.Count != expected.Count)
        {
            // A graze: between the two crossings the height keeps near the threshold.
            var more = found.Count > expected.Count ? found : expected;
            var less = found.Count > expected.Count ? expected : found;
            var extra = more.Where(time =>
                    !less.Any(other => (other - time).Duration() < TimeSpan.FromMinutes(2.0))
                )
                .ToList();
            Assert.Equal(2, extra.Count);
            Assert.InRange(
                Math.Abs(height(extra[0] + ((extra[1] - extra[0]) / 2.0))),
                0.0,
                tolerance
            );
            return less.Count;
        }

        for (var i = 0; i < found.Count; i++)
        {
            // Half the way between the two is at the threshold, too: they are the same event.
            var middle = found[i] + ((expected[i] - found[i]) / 2.0);
            Assert.InRange(Math.Abs(height(middle)), 0.0, tolerance);
        }

        return found.Count;
    }
}
