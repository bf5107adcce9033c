namespace Framing.Mosaics.Tests;

public sealed class OwenFunctionTests
{
    [Fact]
    public void T_CheckValue_IsMet()
    {
        var entry = CheckValues.One("ovl-owen");

        entry.Meets("T", OwenFunction.T(entry.Input("h"), entry.Input("a")));
    }

    [Fact]
    public void T_Grid_AgreesWithTheIntegral()
    {
        for (var h = -8.0; h <= 8.0; h += 0.5)
        {
            foreach (var a in new[] { -3.0, -0.5, 0.0, 0.01, 0.3, 0.99, 1.0, 1.01, 2.5, 9.0, 40.0 })
            {
                Assert.Equal(Simpson(h, a), OwenFunction.T(h, a), 3e-15);
            }
        }
    }

    [Fact]
    public void T_LimitsOfTheSecondArgument_AreClosedForms()
    {
        // Owen 1956: T(h, 1) = Φ(h)(1 - Φ(h))/2, T(h, ∞) = (1 - Φ(|h|))/2, T(0, a) = atan(a)/2π.
        for (var h = 0.0; h < 6.0; h += 0.25)
        {
            var p = NormalDistribution.Cumulative(h);
            Assert.Equal(p * (1.0 - p) / 2.0, OwenFunction.T(h, 1.0), 2e-16);
            Assert.Equal((1.0 - p) / 2.0, OwenFunction.T(h, double.PositiveInfinity), 2e-16);
            Assert.Equal(Math.Atan(h) / Math.Tau, OwenFunction.T(0.0, h), 2e-16);
        }
    }

    private static double Simpson(double h, double a)
    {
        const int Steps = 4_000;
        var step = a / Steps;
        double At(double x) => Math.Exp(-h * h * (1.0 + (x * x)) / 2.0) / (1.0 + (x * x));
        var sum = At(0.0) + At(a);
        for (var i = 1; i < Steps; i++)
        {
            sum += (i % 2 == 0 ? 2.0 : 4.0) * At(i * step);
        }

        return sum * step / 3.0 / Math.Tau;
    }
}
