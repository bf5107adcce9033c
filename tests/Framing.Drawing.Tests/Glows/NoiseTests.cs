namespace Framing.Drawing.Tests;

public sealed class NoiseTests
{
    [Fact]
    public void At_ManyPlaces_FillsTheRangeAroundItsMiddle()
    {
        var noise = new Noise(1);
        var values = new List<double>();
        for (var i = 0; i < 20_000; i++)
        {
            values.Add(noise.At(i * 0.37, i * -0.91, 0.001));
        }

        Assert.All(values, value => Assert.InRange(value, 0.0, 1.0));
        Assert.Equal(0.5, values.Average(), 0.02);
        Assert.True(values.Min() < 0.2 && values.Max() > 0.8);
    }

    [Fact]
    public void At_NeighbouringPlaces_ChangesSmoothly()
    {
        var noise = new Noise(2);
        for (var i = 0; i < 5000; i++)
        {
            var (x, y) = (i * 0.173, i * -0.077);

            // The steepest the seven octaves can be: weights and lattice steps times 15/8, the steepest of the mix.
            var change = Math.Abs(noise.At(x + 1e-4, y, 1e-9) - noise.At(x, y, 1e-9));
            Assert.InRange(change, 0.0, 1e-4 * 1.875 * 0.5 * 7.9 * 1.42);
        }
    }

    [Fact]
    public void At_NothingFineEnough_IsFlat() => Assert.Equal(0.5, new Noise(3).At(3.3, 4.4, 1.0));
}
