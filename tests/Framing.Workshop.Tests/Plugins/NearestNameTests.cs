namespace Framing.Workshop.Tests;

public sealed class NearestNameTests
{
    private static readonly string[] Known = ["north-up", "east-up", "to-outline", "along-outline"];

    [Theory]
    [InlineData("north-up", "north-up")]
    [InlineData("notrh-up", "north-up")]
    [InlineData("North Up", "north-up")]
    [InlineData("esat-up", "east-up")]
    [InlineData("outline", "to-outline")]
    [InlineData("alongoutline", "along-outline")]
    [InlineData("galaxy", null)]
    [InlineData("", null)]
    public void Among_AMistypedName_FindsTheNearest(string mistyped, string? expected) =>
        Assert.Equal(expected, NearestName.Among(mistyped, Known));

    [Fact]
    public void Among_NoNames_FindsNone() => Assert.Null(NearestName.Among("north-up", []));
}
