namespace Framing.Catalogue.Tests.Names;

public sealed class EditDistanceTests
{
    [Theory]
    [InlineData("", "", 0)]
    [InlineData("", "abc", 3)]
    [InlineData("heart", "heart", 0)]
    [InlineData("hart", "heart", 1)]
    [InlineData("haert", "heart", 1)]
    [InlineData("ca", "abc", 3)]
    [InlineData("kitten", "sitting", 3)]
    public void Between_Words_CountsSlips(string left, string right, int slips)
    {
        // "ca" to "abc" is 3 for the optimal string alignment (2 without its restriction).
        Assert.Equal(slips, EditDistance.Between(left, right));
        Assert.Equal(slips, EditDistance.Between(right, left));
    }

    [Fact]
    public void Between_LongWords_NeedsNoStack()
    {
        var left = new string('a', 3000);
        Assert.Equal(3000, EditDistance.Between(left, new string('b', 3000)));
    }
}
