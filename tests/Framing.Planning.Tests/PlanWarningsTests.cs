using Framing.Mosaics;

namespace Framing.Planning.Tests;

public sealed class PlanWarningsTests
{
    [Fact]
    public void Warnings_WhenAnotherAngleFits_NamesTheEndTheAmountAndTheAngle()
    {
        // 4.0° of box along north in a frame 2.99° high: a quarter turn fits.
        var plan = Requests.Framed(
            Requests.Of(
                Requests.Box(150.0, 20.0, 4.0, 1.0, 0.0),
                new Requests.Turn(0.0),
                grid: GridWish.Fixed(1, 1)
            )
        );
        var warning = Assert.Single(plan.Warnings);

        // (4.0 - 2.994) / 2 degrees is 30.2 minutes of arc; in tangents a little more.
        Assert.Matches(
            "^The (north|south) end of the outline falls 30\\.[0-9]′ outside the frame\\. ",
            warning
        );
        Assert.Matches("Turn the camera to [0-9.]+°, where it fits\\.$", warning);
    }

    [Fact]
    public void Warnings_WhenNoAngleFits_AsksForMorePanels()
    {
        var plan = Requests.Framed(
            Requests.Of(
                Requests.Box(150.0, 20.0, 4.0, 8.0, 0.0),
                new Requests.Best(),
                grid: GridWish.Fixed(1, 1)
            )
        );
        Assert.Contains(
            "No other angle is better: add a",
            Assert.Single(plan.Warnings),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Warnings_WhenOnlyTheMarginIsShort_SaysByHowMuch()
    {
        var request = Requests.Of(
            Requests.Box(150.0, 20.0, 2.9, 4.3, 0.0),
            grid: GridWish.Fixed(1, 1)
        );
        var plan = Requests.Framed(
            request with
            {
                Margin = Framing.Sky.Angle.FromArcminutes(10.0),
            }
        );
        var warning = Assert.Single(plan.Warnings);
        Assert.StartsWith("The tight sides keep 2.", warning, StringComparison.Ordinal);
        Assert.Contains("less than wanted", warning, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.0, "north")]
    [InlineData(22.4, "north")]
    [InlineData(22.6, "north-east")]
    [InlineData(90.0, "east")]
    [InlineData(225.0, "south-west")]
    [InlineData(337.6, "north")]
    [InlineData(359.9, "north")]
    public void SkyWind_Of_NamesTheNearestOfEight(double degrees, string name) =>
        Assert.Equal(name, SkyWind.Of(Framing.Sky.PositionAngle.FromDegrees(degrees)));
}
