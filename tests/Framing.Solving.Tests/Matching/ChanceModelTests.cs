namespace Framing.Solving.Tests;

public sealed class ChanceModelTests
{
    [Theory]
    [InlineData(40, 0.002)]
    [InlineData(40, 0.05)]
    [InlineData(200, 0.01)]
    public void LogTail_OfEqualTrials_IsNeverBelowTheExactTail(int trials, double chance)
    {
        // The exact tail: the sum of the binomial distribution, term by term.
        for (var hits = 1; hits <= Math.Min(trials, 30); hits++)
        {
            var exact = 0.0;
            for (var k = trials; k >= hits; k--)
            {
                exact += Math.Exp(
                    LogFactorial(trials)
                        - LogFactorial(k)
                        - LogFactorial(trials - k)
                        + (k * Math.Log(chance))
                        + ((trials - k) * Math.Log(1.0 - chance))
                );
            }

            var bound = Math.Exp(ChanceModel.LogTail(hits, trials * chance));
            Assert.True(
                bound >= exact * (1.0 - 1e-9),
                FormattableString.Invariant($"{hits} of {trials}: {bound} below {exact}")
            );

            // A bound that is not wasteful: within three magnitudes where it matters.
            if (exact is > 1e-15 and < 1e-6)
            {
                Assert.True(
                    bound < 1000.0 * exact,
                    FormattableString.Invariant($"{hits}: {bound}")
                );
            }
        }
    }

    [Theory]
    [InlineData(0, 0.1)]
    [InlineData(-3, 0.1)]
    [InlineData(2, 2.0)]
    [InlineData(2, 5.0)]
    public void LogTail_OfNoMoreThanExpected_IsCertainty(int hits, double expected) =>
        Assert.Equal(0.0, ChanceModel.LogTail(hits, expected));

    private static double LogFactorial(int number)
    {
        var sum = 0.0;
        for (var i = 2; i <= number; i++)
        {
            sum += Math.Log(i);
        }

        return sum;
    }
}
