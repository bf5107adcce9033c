namespace Framing.Nights.Tests;

public sealed class BatteryTests
{
    [Theory]
    [InlineData(BatteryChemistry.LithiumIronPhosphate, 20.0, 1.0)]
    [InlineData(BatteryChemistry.LithiumIronPhosphate, 35.0, 1.0)]
    [InlineData(BatteryChemistry.LithiumIronPhosphate, 0.0, 0.9)]
    [InlineData(BatteryChemistry.LithiumIronPhosphate, -10.0, 0.8)]
    [InlineData(BatteryChemistry.LeadAcid, 10.0, 0.9)]
    [InlineData(BatteryChemistry.LeadAcid, -10.0, 0.65)]
    [InlineData(BatteryChemistry.LeadAcid, -60.0, 0.3)]
    public void ColdFactor_IsCommonPractice(BatteryChemistry kind, double celsius, double factor) =>
        Assert.Equal(factor, Battery.ColdFactor(kind, celsius), 1e-12);

    [Fact]
    public void UsableWattHours_OfLeadUnderAHeavyLoad_IsLess()
    {
        var lead = new Battery(600.0, BatteryChemistry.LeadAcid, 0.5, 0.2, 1.0);

        // At the rated drain of 20 hours, 30 W, all of it; at twice that 2^-0.15 of it (Peukert 1897, exponent 1.15).
        Assert.Equal(240.0, lead.UsableWattHours(20.0, 30.0), 1e-9);
        Assert.Equal(240.0 * Math.Pow(2.0, -0.15), lead.UsableWattHours(20.0, 60.0), 1e-9);
        var lithium = lead with { Chemistry = BatteryChemistry.LithiumIronPhosphate };
        Assert.Equal(240.0, lithium.UsableWattHours(20.0, 60.0), 1e-9);
    }

    [Fact]
    public void Budget_WithoutLoads_LastsForEver()
    {
        var battery = new Battery(500.0, BatteryChemistry.LithiumIon, 0.8, 0.2, 1.0);
        var budget = PowerBudget.Of(battery, [], TimeSpan.FromHours(9.0), 0.0);
        Assert.Null(budget.HoursAvailable);
        Assert.True(budget.IsEnough);
    }

    [Fact]
    public void ForChance_OfWhatIsNotAChance_IsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SubCount.ForChance(10, 0.1, 1.0));
        Assert.Throws<ArgumentOutOfRangeException>(() => SubCount.OnAverage(10, 1.0));
        Assert.Equal(10, SubCount.ForChance(10, 0.0, 0.99));
        Assert.Equal(0, SubCount.ForChance(0, 0.2, 0.99));
    }
}
