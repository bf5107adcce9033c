using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Planning.Tests;

public sealed class FramingStepTests
{
    [Fact]
    public void Frame_OfOneFrame_StandsInTheMiddleOfTheOutline()
    {
        var plan = Requests.Framed(Requests.Of(Requests.Box(40.0, 60.0, 2.0, 3.0, 0.0)));
        var panel = Assert.Single(plan.Panels);
        Assert.True(
            panel.Centre.SeparationTo(SkyDirection.FromDegrees(40.0, 60.0)).Arcseconds < 1e-3
        );
        Assert.Equal(0.0, panel.PositionAngle.Degrees, 9);
        Assert.Equal(1.0, plan.Coverage!.TargetCoveredFraction, 9);

        // In the tangent plane of the middle the box is exact: half of field less half of box on each side.
        var field = Requests.ShortLens.Field;
        var expected = Math.Min(
            (field.TangentWidth / 2.0) - Math.Tan(1.5 * Math.PI / 180.0),
            (field.TangentHeight / 2.0) - Math.Tan(1.0 * Math.PI / 180.0)
        );
        Assert.Equal(expected, plan.TangentMargin, 12);
        Assert.Empty(plan.Warnings);
    }

    [Fact]
    public void Frame_WithDithering_AddsItToTheMargin()
    {
        var request = Requests.Of(Requests.Box(40.0, 60.0, 2.0, 3.0, 0.0)) with
        {
            Margin = Angle.FromArcminutes(8.0),
            Errors = new PanelErrors(default, default, Angle.FromArcseconds(30.0), default),
        };
        Assert.Equal(
            Math.Tan(Angle.FromArcminutes(8.5).Radians),
            Requests.Framed(request).WantedTangentMargin,
            15
        );
    }

    [Fact]
    public void Frame_TooLargeForOne_TakesTheFewestPanels()
    {
        var plan = Requests.Framed(
            Requests.Of(Requests.Box(200.0, -30.0, 7.0, 2.0, 25.0), new Requests.Best())
        );
        Assert.Equal(2, plan.Panels.Count);
        Assert.Equal((2, 1), (plan.Columns, plan.Rows));
        Assert.True(plan.TangentMargin >= 0.0);
        Assert.Equal(1.0, plan.Coverage!.TargetCoveredFraction, 6);
    }

    [Fact]
    public void Frame_WithAnOverlapThatHangsOnTheAngle_SettlesOnBoth()
    {
        var overlap = new Requests.ShareByAngle();
        var request = Requests.Of(
            Requests.Box(120.0, 30.0, 9.0, 2.0, 60.0),
            new Requests.Best(),
            overlap
        );
        var plan = Requests.Framed(request);
        var part = 0.1 + (0.05 * Math.Abs(Math.Sin(plan.Pose.PositionAngle.Radians)));
        Assert.Equal(Requests.ShortLens.Field.TangentWidth * part, plan.Overlap.AlongWidth, 9);
        Assert.InRange(overlap.Asked, 2, FramingStep.MostRounds + 1);
    }

    [Fact]
    public void Frame_WhenAStrategyRefuses_SaysWhichAndWhy()
    {
        var outcome = FramingStep.Frame(
            Requests.Of(Requests.Box(40.0, 60.0, 2.0, 3.0, 0.0), new Requests.Refuse())
        );
        Assert.Null(outcome.Plan);
        Assert.Equal("strategy \"test-rotation\": no angle is known", outcome.Refusal);
    }

    [Fact]
    public void Frame_WithMorePanelsThanAllowed_SaysHowManyItNeeds()
    {
        var plan = Requests.Framed(
            Requests.Of(Requests.Box(40.0, 60.0, 30.0, 30.0, 0.0)) with
            {
                MostPanels = 12,
            }
        );
        Assert.Contains("the plan allows 12", plan.Impossible, StringComparison.Ordinal);
        Assert.Empty(plan.Panels);
        Assert.Null(plan.Coverage);
        Assert.True(plan.Columns * plan.Rows > 12);
    }

    [Fact]
    public void Frame_GivesEntriesInTheMountsOwnFrame()
    {
        var outline = Requests.Box(40.0, 60.0, 2.0, 3.0, 0.0);
        var ofDate = Requests.Framed(Requests.Of(outline)).Panels[0];
        var j2000 = Requests
            .Framed(Requests.Of(outline) with { GotoFrame = GotoFrame.J2000 })
            .Panels[0];
        Assert.Equal("2h 40m 00s", j2000.EntryRa);
        Assert.Equal("+60° 00′ 00″", j2000.EntryDec);

        // maths notes, section 5: at dec 60 between RA 0h and 6h the place of 2026 stands some 15′ from that of J2000.
        Assert.InRange(ofDate.OfDate.SeparationTo(ofDate.Centre).Arcminutes, 13.0, 19.0);
        Assert.NotEqual(j2000.EntryRa, ofDate.EntryRa);
        Assert.Equal(
            EntryText.Declination(ofDate.OfDate.Declination, EntryFormat.HmsDms),
            ofDate.EntryDec
        );
    }

    [Fact]
    public void Frame_WithTheCameraLeftAlone_KeepsItsAngleToThePoleOfDate()
    {
        var request = Requests.Of(
            Requests.Box(0.0, 84.0, 2.0, 8.0, 0.0),
            grid: GridWish.Fixed(3, 1)
        );
        var plan = Requests.Framed(request);
        var pole = OfDateFrame
            .At(TerrestrialTime.FromUtc(request.At))
            .ToIcrs(SkyDirection.NorthPole);
        var against = plan.Panels.Select(panel =>
            panel.Centre.PositionAngleTo(pole).TurnTo(panel.PositionAngle).Degrees
        );
        Assert.All(against, angle => Assert.Equal(against.First(), angle, 9));
        Assert.True(
            Math.Abs(plan.Panels[0].PositionAngle.TurnTo(plan.Panels[2].PositionAngle).Degrees)
                > 0.1
        );

        var turned = Requests.Framed(request with { TurnCameraAtEachPanel = true });
        Assert.True(
            Math.Abs(turned.Panels[0].PositionAngle.TurnTo(turned.Panels[2].PositionAngle).Degrees)
                > 30.0
        );
    }

    [Fact]
    public void Frame_OfTheSameRequest_AnswersTheSame()
    {
        var request = Requests.Of(Requests.Box(0.5, 5.0, 9.0, 5.0, 33.0), new Requests.Best());
        var first = Requests.Framed(request);
        var second = Requests.Framed(request);
        Assert.Equal(
            first.Panels.Select(panel => panel.Centre),
            second.Panels.Select(panel => panel.Centre)
        );
        Assert.Equal(first.Pose, second.Pose);
        Assert.Equal(first.Coverage!.Area, second.Coverage!.Area);
    }
}
