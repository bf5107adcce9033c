namespace Framing.Planning.Tests;

public sealed class ChanceTextTests
{
    [Theory]
    [InlineData(1.0, "more than 999 times in 1000")]
    [InlineData(0.9996, "more than 999 times in 1000")]
    [InlineData(0.9994, "999 times in 1000")]
    [InlineData(0.9951, "995 times in 1000")]
    [InlineData(0.9949, "99 times in 100")]
    [InlineData(0.99, "99 times in 100")]
    [InlineData(0.4449, "44 times in 100")]
    [InlineData(0.02, "2 times in 100")]
    [InlineData(0.013, "once in 100")]
    [InlineData(0.0049, "less than once in 100")]
    [InlineData(0.0, "less than once in 100")]
    public void Times_OfAChance_CountsAsPeopleDo(double chance, string words) =>
        Assert.Equal(words, ChanceText.Times(chance));
}
