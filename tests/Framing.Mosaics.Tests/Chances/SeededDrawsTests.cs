namespace Framing.Mosaics.Tests;

public sealed class SeededDrawsTests
{
    [Fact]
    public void Normal_ManyDraws_FollowTheDistribution()
    {
        // Kolmogorov's bound at 1 in 10,000 is 2.226/sqrt(n) (from the distribution's series); the seed is fixed.
        const int Draws = 100_000;
        var draws = new SeededDraws(5, 0);
        var values = new double[Draws];
        for (var i = 0; i < Draws; i++)
        {
            values[i] = draws.Normal();
        }

        Array.Sort(values);
        var farthest = 0.0;
        for (var i = 0; i < Draws; i++)
        {
            var chance = NormalDistribution.Cumulative(values[i]);
            farthest = Math.Max(farthest, Math.Abs(chance - ((i + 0.5) / Draws)));
        }

        Assert.InRange(farthest, 0.0, 2.226 / Math.Sqrt(Draws));
    }

    [Fact]
    public void Normal_FirstValuesOfSequences_AreUncorrelated()
    {
        // Neighbouring trials must not know of each other: |r| below 4/sqrt(n).
        const int Sequences = 20_000;
        var firsts = new double[Sequences];
        for (var i = 0; i < Sequences; i++)
        {
            var draws = new SeededDraws(1, (ulong)i);
            firsts[i] = draws.Normal();
        }

        var mean = firsts.Average();
        var spread = firsts.Average(value => value * value);
        var shared = firsts.Zip(firsts.Skip(1), (a, b) => a * b).Average();

        Assert.Equal(0.0, mean, 4.0 / Math.Sqrt(Sequences));
        Assert.Equal(1.0, spread, 4.0 * Math.Sqrt(2.0 / Sequences));
        Assert.Equal(0.0, shared, 4.0 / Math.Sqrt(Sequences));
    }

    [Fact]
    public void Uniform_SameSeedAndSequence_IsTheSameAndOthersDiffer()
    {
        var one = new SeededDraws(7, 3);
        var again = new SeededDraws(7, 3);
        var sequence = new SeededDraws(7, 4);
        var seed = new SeededDraws(8, 3);
        var value = one.Uniform();

        Assert.Equal(value, again.Uniform());
        Assert.NotEqual(value, sequence.Uniform());
        Assert.NotEqual(value, seed.Uniform());
        Assert.InRange(value, 0.0, 1.0);
    }

    [Theory]
    [InlineData(1.0)]
    [InlineData(0.5)]
    [InlineData(0.9999999999)]
    [InlineData(1e-300)]
    [InlineData(0.7071067811865)]
    [InlineData(0.70710678118656)]
    [InlineData(123.456)]
    public void Logarithm_AnyNumber_IsTheNaturalLogarithm(double x) =>
        Assert.Equal(Math.Log(x), SeededDraws.Logarithm(x), 1e-15 * (1.0 + Math.Abs(Math.Log(x))));
}
