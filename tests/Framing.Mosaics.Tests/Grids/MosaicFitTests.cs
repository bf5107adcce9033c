using Framing.Sky;

namespace Framing.Mosaics.Tests;

public sealed class MosaicFitTests
{
    private static readonly FieldShape Field = new(0.0767, 0.0523);

    private static readonly PanelOverlap Overlap = new(0.0077, 0.0052);

    private static readonly SkyOutline Ridge = SkyOutline.Ellipse(
        SkyDirection.FromDegrees(359.0, 61.0),
        Angle.FromDegrees(7.5),
        Angle.FromDegrees(2.0),
        PositionAngle.FromDegrees(70.0)
    );

    [Fact]
    public void LargestMargin_FixedGrid_IsTheFitOfTheWholeFrame()
    {
        var fit = MosaicFit.LargestMargin(Ridge, Field, Overlap, GridWish.Fixed(2, 1), 0.001, 100);

        Assert.Equal((2, 1), (fit.Columns, fit.Rows));
        Assert.Equal(
            OutlineFit.LargestMargin(Ridge, GridSteps.WholeFrame(Field, Overlap, 2, 1)),
            fit.Frame
        );
        Assert.True(fit.WithinMostPanels);
        Assert.True(fit.HoldsMargin);
    }

    [Fact]
    public void LargestMargin_FixedGridThatIsTooSmall_SaysSo()
    {
        var fit = MosaicFit.LargestMargin(Ridge, Field, Overlap, GridWish.Fixed(1, 1), 0.0, 100);

        Assert.False(fit.HoldsMargin);
        Assert.True(fit.Frame.TangentMargin < 0.0);
    }

    [Fact]
    public void LargestMargin_FixedGridBeyondMostPanels_SaysHowMany()
    {
        var fit = MosaicFit.LargestMargin(Ridge, Field, Overlap, GridWish.Fixed(4, 3), 0.0, 10);

        Assert.False(fit.WithinMostPanels);
        Assert.Equal(12, fit.Panels);
    }

    [Fact]
    public void LargestMargin_FewestBeyondMostPanels_SaysHowManyWouldBeNeeded()
    {
        var small = new FieldShape(Field.TangentWidth / 9.0, Field.TangentHeight / 9.0);
        var overlap = new PanelOverlap(0.1 * small.TangentWidth, 0.1 * small.TangentHeight);

        var few = MosaicFit.LargestMargin(Ridge, small, overlap, GridWish.Fewest, 0.001, 10);
        var many = MosaicFit.LargestMargin(Ridge, small, overlap, GridWish.Fewest, 0.001, 10_000);

        Assert.False(few.WithinMostPanels);
        Assert.True(many.WithinMostPanels);
        Assert.Equal(many.Panels, few.Panels);
        Assert.True(many.HoldsMargin);
    }

    [Fact]
    public void LargestMargin_TinyPanels_StillAnswers()
    {
        // A chip of a few seconds of arc over degrees: millions of panels, told without trying every grid.
        var fit = MosaicFit.LargestMargin(
            Ridge,
            new(2e-5, 1e-5),
            default,
            GridWish.Fewest,
            0.0,
            100
        );

        Assert.False(fit.WithinMostPanels);
        Assert.True(fit.Panels > 10_000_000);
        Assert.True(fit.HoldsMargin);
    }

    [Fact]
    public void LargestMargin_Fewest_IsNeverBeatenByTryingEveryGrid()
    {
        var random = new Random(31415);
        for (var run = 0; run < 60; run++)
        {
            var (outline, field, overlap, margin) = RandomTask(random);
            var fit = MosaicFit.LargestMargin(outline, field, overlap, GridWish.Fewest, margin, 40);
            Assert.True(fit.HoldsMargin);
            if (!fit.WithinMostPanels)
            {
                continue;
            }

            for (var columns = 1; columns <= fit.Panels; columns++)
            {
                for (var rows = 1; rows * columns <= fit.Panels; rows++)
                {
                    var whole = GridSteps.WholeFrame(field, overlap, columns, rows);
                    var other = OutlineFit.LargestMargin(outline, whole);
                    if (columns * rows < fit.Panels)
                    {
                        Assert.True(other.TangentMargin < margin);
                    }
                    else
                    {
                        Assert.True(
                            other.TangentMargin < margin
                                || other.TangentMargin <= fit.Frame.TangentMargin + 1e-11
                        );
                    }
                }
            }
        }
    }

    [Fact]
    public void LargestMargin_Fewest_IsNeverBeatenByAnyAngle()
    {
        var random = new Random(27182);
        for (var run = 0; run < 60; run++)
        {
            var (outline, field, overlap, margin) = RandomTask(random);
            var fit = MosaicFit.LargestMargin(
                outline,
                field,
                overlap,
                GridWish.Fewest,
                margin,
                100
            );
            for (var angle = 0; angle < 180; angle += 2)
            {
                var other = MosaicFit.AtAngle(
                    outline,
                    field,
                    overlap,
                    GridWish.Fewest,
                    margin,
                    100,
                    PositionAngle.FromDegrees(angle)
                );
                Assert.True(other.HoldsMargin);
                Assert.True(other.Panels >= fit.Panels);
                Assert.True(
                    other.Panels > fit.Panels
                        || other.Frame.TangentMargin <= fit.Frame.TangentMargin + 1e-11
                );
            }
        }
    }

    [Fact]
    public void AtAngle_TheAngleOfTheLargestMargin_GivesTheSameGridBack()
    {
        var random = new Random(16180);
        for (var run = 0; run < 150; run++)
        {
            var (outline, field, overlap, margin) = RandomTask(random);
            var fit = MosaicFit.LargestMargin(
                outline,
                field,
                overlap,
                GridWish.Fewest,
                margin,
                100
            );

            var again = MosaicFit.AtAngle(
                outline,
                field,
                overlap,
                GridWish.Fewest,
                margin,
                100,
                fit.Frame.Pose.PositionAngle
            );

            Assert.Equal(fit.Panels, again.Panels);
            Assert.Equal((fit.Columns, fit.Rows), (again.Columns, again.Rows));
            Assert.Equal(fit.Frame.TangentMargin, again.Frame.TangentMargin, 1e-11);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-3)]
    public void LargestMargin_MostPanelsBelowOne_Throws(int mostPanels) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            MosaicFit.LargestMargin(Ridge, Field, Overlap, GridWish.Fewest, 0.0, mostPanels)
        );

    private static (
        SkyOutline Outline,
        FieldShape Field,
        PanelOverlap Overlap,
        double Margin
    ) RandomTask(Random random)
    {
        var outline = RandomOutlines.OnTheSky(random);

        var size = Math.Max(Math.Tan(outline.Radius.Radians), 1e-4);
        var field = new FieldShape(
            size * (0.3 + random.NextDouble()),
            size * (0.3 + random.NextDouble())
        );
        var share = 0.3 * random.NextDouble();
        return (
            outline,
            field,
            new(share * field.TangentWidth, share * field.TangentHeight),
            0.05 * size * random.NextDouble()
        );
    }
}
