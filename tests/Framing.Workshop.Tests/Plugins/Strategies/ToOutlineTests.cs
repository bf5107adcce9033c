using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Workshop.Tests;

public sealed class ToOutlineTests
{
    // An ellipse of semi-axes a = 2.0 and b = 0.9 needs widths eu and ev with eu^2 + ev^2 = 4 (a^2 + b^2) at every angle; in a
    // frame of 4.5 by 3.0 both margins are equal where eu - ev = 1.5: eu = (1.5 + sqrt(2 * 19.24 - 1.5^2)) / 2, a margin of
    // 0.3702160, the frame turned by 22.480874 degrees from the ellipse to either side (derived). The ellipse stands at a
    // position angle of 65, so up at 155 -+ 22.480874. Our polygon stands out by at most 0.054 %.
    [Theory]
    [InlineData(null, 177.481)]
    [InlineData(130.0, 132.519)]
    [InlineData(290.0, 312.519)]
    [InlineData(170.0, 177.481)]
    [InlineData(10.0, 357.481)]
    public void Choose_Ellipse_TakesTheLargestMarginNearestToThePresentAngle(
        double? present,
        double expected
    )
    {
        var semi = new[] { 2.0, 0.9 }.Select(value =>
            Angle.FromRadians(2.0 * Math.Atan(value * Math.PI / 180.0))
        );
        var ellipse = SkyOutline.Ellipse(
            SkyDirection.FromDegrees(84.0, 72.0),
            semi.First(),
            semi.Last(),
            PositionAngle.FromDegrees(65.0)
        );
        var rig = Shapes.FourAndAHalfByThree;

        var angle = Ask.Degrees(
            "to-outline",
            Questions.Rotation(ellipse, present: Shapes.Angle360(present)) with
            {
                Rig = rig,
            }
        );

        Assert.InRange(angle, expected - 0.06, expected + 0.06);
        var margin = Extent.Of(ellipse, angle).MarginIn(rig.Field) * 180.0 / Math.PI;
        Assert.InRange(margin, 0.370216 - 0.0011, 0.370216);
    }

    [Theory]
    [InlineData(17.3)]
    [InlineData(203.9)]
    public void Choose_RoundTargetThatFitsAnyhow_LeavesTheCameraAlone(double present)
    {
        var round = SkyOutline.Ellipse(
            SkyDirection.FromDegrees(84.0, 22.0),
            Angle.FromDegrees(1.5),
            Angle.FromDegrees(1.5),
            PositionAngle.North
        );

        var answer = Ask.Rotation(
            "to-outline",
            Questions.Rotation(round, present: Shapes.Angle360(present))
        );

        Assert.Equal(PositionAngle.FromDegrees(present), answer.Angle);
        Assert.StartsWith("where the camera stands now", answer.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Choose_RoundTargetThatNeedsTheBestAngle_Turns()
    {
        // Half a minute of arc too much margin wanted for where the camera stands: a square fits turned by 0 or 90 only.
        var square = SkyOutline.Rectangle(
            SkyDirection.FromDegrees(84.0, 22.0),
            Angle.FromDegrees(2.0),
            Angle.FromDegrees(2.0),
            PositionAngle.North
        );
        var half = Questions.ShortLens.Field.TangentHeight / 2.0;
        var best = half - Math.Tan(Angle.FromDegrees(1.0).Radians);

        var answer = Ask.Rotation(
            "to-outline",
            Questions.Rotation(square, present: PositionAngle.FromDegrees(0.1)) with
            {
                TangentMargin = best - 1e-6,
            }
        );

        Assert.InRange(
            Math.Abs(answer.Angle!.Value.FrameTurnTo(PositionAngle.North).Degrees),
            0.0,
            0.02
        );
    }

    [Fact]
    public void Choose_GroupOfNebulae_IsNotBeatenAtAnyAngle()
    {
        var answer = Ask.Rotation(
            "to-outline",
            Questions.Rotation(Shapes.Group) with
            {
                Rig = Shapes.Wide,
            }
        );

        Assert.Equal("the largest margin round the outline", answer.Reason);
        AssertNotBeaten(Shapes.Group, Shapes.Wide.Field, answer.Angle!.Value.Degrees, 0.1);
    }

    [Fact]
    public void Choose_FixedGrid_TakesTheMosaicAsOneFrame()
    {
        var strip = Shapes.Strip(300.0, 40.0, 9.0, 3.0, 70.0);
        var overlap = new PanelOverlap(0.01, 0.008);
        var field = Shapes.Wide.Field;
        var whole = new FieldShape(
            (3.0 * field.TangentWidth) - 0.02,
            (2.0 * field.TangentHeight) - 0.008
        );

        var answer = Ask.Rotation(
            "to-outline",
            Questions.Rotation(strip) with
            {
                Rig = Shapes.Wide,
                Overlap = overlap,
                Grid = GridWish.Fixed(3, 2),
            }
        );

        Assert.Equal("the largest margin round the outline", answer.Reason);
        AssertNotBeaten(strip, whole, answer.Angle!.Value.Degrees, 0.25);
    }

    [Fact]
    public void Choose_FreeGrid_TakesTheFewestPanelsFirst()
    {
        // 4.39 x 2.99 degrees: laid along it, a strip of 8 x 2.6 degrees needs 2 x 1 panels; any other way more.
        var answer = Ask.Rotation(
            "to-outline",
            Questions.Rotation(Shapes.Strip(300.0, 40.0, 8.0, 2.6, 70.0)) with
            {
                Rig = Shapes.Wide,
                Overlap = new(0.005, 0.005),
            }
        );

        Assert.Equal(
            "the fewest panels, and of their angles the one with the largest margin",
            answer.Reason
        );
        Assert.InRange(answer.Angle!.Value.Degrees, 155.0, 165.0);
    }

    private static void AssertNotBeaten(
        SkyOutline outline,
        FieldShape frame,
        double degrees,
        double step
    )
    {
        var margin = Extent.Of(outline, degrees).MarginIn(frame);
        for (var other = 0.0; other < 180.0; other += step)
        {
            Assert.True(Extent.Of(outline, other).MarginIn(frame) <= margin + 1e-12);
        }

        // Between the steps, near the answer.
        for (var aside = -0.01; aside <= 0.01; aside += 0.0005)
        {
            Assert.True(Extent.Of(outline, degrees + aside).MarginIn(frame) <= margin + 1e-12);
        }
    }
}
