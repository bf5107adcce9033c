namespace Framing.Mosaics.Tests;

public sealed class NormalDistributionTests
{
    /// <summary>erfc(-x/√2)/2 by the C library's erfc (Python 3.11, math.erfc); its last digit is uncertain.</summary>
    [Theory]
    [InlineData(0.0, 0.5)]
    [InlineData(1.0, 0.841344746068543)]
    [InlineData(2.0, 0.977249868051821)]
    [InlineData(-1.0, 0.158655253931457)]
    [InlineData(3.0, 0.998650101968370)]
    [InlineData(-3.0, 0.001349898031630)]
    [InlineData(2.3263478740408408, 0.99)]
    [InlineData(-5.0, 2.866515718791946e-07)]
    [InlineData(-8.0, 6.220960574271819e-16)]
    [InlineData(50.0, 1.0)]
    [InlineData(-50.0, 0.0)]
    public void Cumulative_KnownValues_AreMet(double x, double expected) =>
        Assert.Equal(expected, NormalDistribution.Cumulative(x), 1e-15);

    [Fact]
    public void Cumulative_WhereSeriesAndFractionMeet_IsContinuousAndSymmetric()
    {
        for (var x = 2.9; x < 3.1; x += 0.001)
        {
            Assert.Equal(
                1.0,
                NormalDistribution.Cumulative(x) + NormalDistribution.Cumulative(-x),
                3e-16
            );
        }

        var below = NormalDistribution.Cumulative(Math.BitDecrement(3.0));
        Assert.Equal(NormalDistribution.Cumulative(3.0), below, 3e-16);
    }
}
