using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Planning.Tests;

public sealed class ClosingWarningsTests
{
    private static readonly PanelErrors Errors = new(
        Angle.FromArcminutes(6.0),
        Angle.FromDegrees(1.0),
        Angle.FromArcseconds(20.0),
        Angle.FromArcminutes(3.0)
    );

    [Fact]
    public void Odds_OfAPlan_AreThoseOfItsMosaicDrawnWithItsErrors()
    {
        // The closed form, which other programs have checked: 0.07 of 4.396 degrees shared along 2.994 degrees.
        var plan = Requests.Framed(Pair(0.07));

        var expected = GapChance.OfPair(
            plan.Overlap.AlongWidth,
            Requests.ShortLens.Field.TangentHeight,
            Errors
        );

        Assert.Equal(20_000, plan.Odds!.Trials);
        Assert.InRange(expected, 0.5, 0.99);
        Assert.Equal(
            expected,
            plan.Odds.ChanceNoGap,
            (4.0 * Math.Sqrt(expected * (1.0 - expected) / 20_000.0)) + 0.001
        );
        Assert.Equal(plan.Odds, Requests.Framed(Pair(0.07)).Odds);
    }

    [Fact]
    public void Odds_OfErrorsThatAllShare_OpenNothing()
    {
        var shared = Requests.Framed(Pair(0.07) with { SharedErrorPart = 1.0 });

        Assert.Equal(1.0, shared.Odds!.ChanceNoGap);

        // What all share still moves the mosaic off its target.
        Assert.InRange(shared.Odds.ChanceTargetCovered!.Value, 0.1, 0.999);
        Assert.InRange(
            Requests.Framed(Pair(0.07) with { SharedErrorPart = 0.5 }).Odds!.ChanceNoGap,
            Requests.Framed(Pair(0.07)).Odds!.ChanceNoGap + 0.005,
            0.9999
        );
    }

    [Fact]
    public void Warnings_OfAMosaicThatSeldomCloses_SayHowOftenWhereAndWhatToDo()
    {
        var warning = Assert.Single(
            Requests.Framed(Pair(0.03) with { Grid = GridWish.Fixed(3, 1) }).Warnings,
            text => text.Contains("chance_no_gap", StringComparison.Ordinal)
        );

        Assert.Matches(
            "^With the mount's errors the panels close [0-9]+ times in 100, 99 are wanted \\(chance_no_gap\\)\\. Most often panels (1 and 2|2 and 3) part: [0-9]+ times in 100\\. On average [0-9.]+ square (degrees|minutes of arc) stay open\\. Set overlap = \"for-pointing\"",
            warning
        );
        Assert.DoesNotContain(
            Requests.Framed(Pair(0.2)).Warnings,
            text => text.Contains("chance_no_gap", StringComparison.Ordinal)
        );
    }

    private static FramingRequest Pair(double overlap) =>
        Requests.Of(
            Requests.Box(40.0, 0.0, 2.6, 7.0, 0.0),
            overlap: new Requests.Share(overlap),
            grid: GridWish.Fixed(2, 1)
        ) with
        {
            Errors = Errors,
        };
}
