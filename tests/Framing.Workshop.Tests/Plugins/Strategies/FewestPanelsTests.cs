using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Workshop.Tests;

public sealed class FewestPanelsTests
{
    private static readonly PanelOverlap Overlap = new(0.012, 0.008);

    [Fact]
    public void Choose_RandomOutlines_NeverNeedsMorePanelsThanAnExhaustiveSearch()
    {
        using var strategy = PluginShelf.LoadRotation(
            Shelves.Find(StrategyKind.Rotation, "fewest-panels"),
            out _
        )!;
        var random = new Random(300);
        var counted = 0;
        for (var trial = 0; counted < 300; trial++)
        {
            var outline = Shapes.Strewn(random, 1.0, 14.0);
            var margin = 0.004 * random.NextDouble();
            var question = Questions.Rotation(outline) with
            {
                Rig = Shapes.Wide,
                Overlap = Overlap,
                TangentMargin = margin,
                MostPanels = 1000,
            };
            var degrees = strategy.Choose(question).Angle!.Value.Degrees;
            var (panels, room) = Needed(outline, degrees, margin);
            if (panels > 8)
            {
                continue;
            }

            counted++;
            for (var other = 0.0; other < 180.0; other += 0.5)
            {
                var (others, othersRoom) = Needed(outline, other, margin);
                Assert.False(
                    others < panels,
                    FormattableString.Invariant($"trial {trial}: {others} panels at {other}")
                );
                Assert.False(
                    others == panels && othersRoom > room + 1e-9,
                    FormattableString.Invariant(
                        $"trial {trial}: margin {othersRoom} at {other}, {room} at {degrees}"
                    )
                );
            }
        }
    }

    [Theory]
    [InlineData(1.0, 1.0, "one panel is enough, with the largest margin")]
    [InlineData(8.0, 2.6, "no angle needs fewer than 2 panels; of those, the largest margin")]
    public void Choose_Strip_SaysHowMany(double length, double breadth, string expected) =>
        Assert.Equal(
            expected,
            Ask.Rotation(
                "fewest-panels",
                Questions.Rotation(Shapes.Strip(80.0, 30.0, length, breadth, 20.0)) with
                {
                    Rig = Shapes.Wide,
                    Overlap = new(0.005, 0.005),
                }
            ).Reason
        );

    [Fact]
    public void Choose_FixedGrid_RefusesInWords()
    {
        var answer = Ask.Rotation(
            "fewest-panels",
            Questions.Rotation() with
            {
                Grid = GridWish.Fixed(3, 2),
            }
        );

        Assert.Null(answer.Angle);
        Assert.Equal(
            "it needs grid = \"fewest\" in [mosaic], not [3, 2]; with a fixed grid take to-outline",
            answer.Reason
        );
    }

    /// <summary>
    /// The fewest columns and rows over every phase of the grid, a tenth of a step apart, and the margin of the mosaic when
    /// the outline stands in its middle.
    /// </summary>
    private static (int Panels, double Margin) Needed(
        SkyOutline outline,
        double degrees,
        double margin
    )
    {
        var field = Shapes.Wide.Field;
        var extent = Extent.Of(outline, degrees);
        var columns = Needed(
            extent.Width + (2.0 * margin),
            field.TangentWidth,
            field.TangentWidth - Overlap.AlongWidth
        );
        var rows = Needed(
            extent.Height + (2.0 * margin),
            field.TangentHeight,
            field.TangentHeight - Overlap.AlongHeight
        );
        var whole = new FieldShape(
            field.TangentWidth + ((columns - 1) * (field.TangentWidth - Overlap.AlongWidth)),
            field.TangentHeight + ((rows - 1) * (field.TangentHeight - Overlap.AlongHeight))
        );
        return (columns * rows, extent.MarginIn(whole));
    }

    private static int Needed(double extent, double panel, double step)
    {
        // The first panel may begin before the outline by any tenth of a step.
        var fewest = int.MaxValue;
        for (var phase = 0; phase < 10; phase++)
        {
            var end = panel - (0.1 * phase * step);
            var panels = 1;
            while (end < extent - (1e-9 * step))
            {
                end += step;
                panels++;
            }

            fewest = Math.Min(fewest, panels);
        }

        return fewest;
    }
}
