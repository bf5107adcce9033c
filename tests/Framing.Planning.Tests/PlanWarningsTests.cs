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
            // 4.396° by 2.994° with 15 % shared: 2 x 2 are 8.13° by 5.54°; on end, 3 in a row are 4.396° by 8.08°.
            "No other angle is better for this grid; to hold it takes 4 panels at 0°, grid = [2, 2], or 3 panels at 90°, grid = [1, 3].",
            Assert.Single(plan.Warnings),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Warnings_WhenAnotherAngleNeedsFewerPanels_NameIt()
    {
        // A long narrow box across a frame left north up: two panels at its own angle, more as the camera stands.
        var plan = Requests.Framed(
            Requests.Of(
                Requests.Box(150.0, 20.0, 8.0, 1.0, 45.0),
                new Requests.Turn(0.0),
                grid: GridWish.Fixed(1, 1)
            )
        );
        Assert.Matches(
            @"; to hold it takes 6 panels at 0°, grid = \[2, 3\], or 2 panels at (45|135)°, grid = \[(2, 1|1, 2)\]\.$",
            Assert.Single(plan.Warnings)
        );
    }

    [Theory]
    [InlineData(88.0, 85.0, "Panel 1 stands beyond declination 85°")]
    [InlineData(-88.0, 85.5, "Panel 1 stands beyond declination 85.5°")]
    [InlineData(80.0, 85.0, null)]
    [InlineData(88.0, 90.0, null)]
    public void Warnings_OfPanelsThatTheMountCannotReach_NameThem(
        double declination,
        double limit,
        string? words
    )
    {
        var plan = Requests.Framed(
            Requests.Of(Requests.Box(150.0, declination, 0.5, 0.5, 0.0)) with
            {
                DeclinationLimit = Framing.Sky.Angle.FromDegrees(limit),
            }
        );
        if (words is null)
        {
            Assert.Empty(plan.Warnings);
        }
        else
        {
            Assert.StartsWith(words, Assert.Single(plan.Warnings), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Warnings_OfPanelsThatTurnApartNearThePole_SayHowMuchStaysOpenAndWhatToDo()
    {
        var left = Requests.Of(Requests.Box(45.0, 88.0, 6.0, 5.0, 0.0), new Requests.Turn(90.0));

        var warning = Assert.Single(Requests.Framed(left).Warnings);
        Assert.Matches(
            "^Between the panels [0-9]+\\.[0-9] square degrees stay open\\. .*turn_camera_at_each_panel = true",
            warning
        );
        Assert.Empty(Requests.Framed(left with { TurnCameraAtEachPanel = true }).Warnings);
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
