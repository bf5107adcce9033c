using Framing.Sky;

namespace Framing.Solving.Tests;

/// <summary>
/// Many made-up star lists with their truth. A seeded share runs always; FRAMING_LONG=1 runs all 2,000 with a hint, 2,000
/// blind and 100,000 without an answer.
/// </summary>
public sealed class StarListTests
{
    [Fact]
    public void Hinted_FieldsOfTwoDegreesAndMore_AreSolved()
    {
        var score = ListScore.Of(LongRun.Count(200, 2000), number => Hinted(number, 2.0, 20.0));
        Assert.True(score.SolvedShare >= 0.995, score.ToString());
        AssertPlaces(score);
    }

    [Fact]
    public void Blind_FieldsOfTwoToTwelveDegrees_AreSolved()
    {
        var score = ListScore.Of(LongRun.Count(200, 2000), number => Blind(number, 2.0, 12.0));
        Assert.True(score.SolvedShare >= 0.98, score.ToString());
        AssertPlaces(score);
    }

    [Fact]
    public void Blind_NarrowestAndWidestFields_AreMostlySolved()
    {
        // Fields of 1.5 to 2 degrees hold so few catalogue stars that half of them lost leaves little to be certain of.
        var narrow = ListScore.Of(LongRun.Count(40, 500), number => Blind(number, 1.5, 2.0));
        Assert.True(narrow.SolvedShare >= 0.93, narrow.ToString());
        AssertPlaces(narrow);
        var wide = ListScore.Of(LongRun.Count(40, 500), number => Blind(number, 12.0, 20.0));
        Assert.True(wide.SolvedShare >= 0.98, wide.ToString());
        AssertPlaces(wide);
    }

    [Fact]
    public void Lists_WithoutAnAnswer_AreNeverSolved()
    {
        var score = ListScore.Of(
            LongRun.Count(100, 100_000),
            number =>
            {
                var list = new StarListMaker(Seed(3, number)).MakeNonsense(number % 2 == 0);
                return (list, list.Request);
            }
        );
        Assert.True(score.Solved == 0, score.ToString());
    }

    [Fact]
    public void Lists_WithoutAnAnswer_AreNotSolvedByAHintEither()
    {
        var score = ListScore.Of(
            LongRun.Count(30, 2000),
            number =>
            {
                var maker = new StarListMaker(Seed(4, number));
                var list = maker.MakeNonsense(number % 2 == 0);
                return (list, WithHint(maker, list));
            }
        );
        Assert.True(score.Solved == 0, score.ToString());
    }

    [Fact]
    public void Lists_OfFewerThanTwelveStars_AreSolvedRightOrRefused()
    {
        var score = ListScore.Of(
            LongRun.Count(50, 1000),
            number =>
            {
                var maker = new StarListMaker(Seed(5, number));
                var list = maker.Make(2.0, 12.0, leastStars: 1, mostStars: 11, withFalse: false);
                return (list, number % 2 == 0 ? list.Request : WithHint(maker, list));
            }
        );
        Assert.True(score.Wrong.Count == 0, score.ToString());
        Assert.All(
            score.Unsolved,
            line =>
                Assert.EndsWith(nameof(SolveRefusal.TooFewStars), line, StringComparison.Ordinal)
        );
        Assert.InRange(score.Solved, 1, score.Lists - 1);
    }

    private static void AssertPlaces(ListScore score)
    {
        Assert.True(score.Wrong.Count == 0, score.ToString());
        Assert.True(score.CentredShare >= 0.99, score.ToString());
        Assert.True(score.TurnedShare >= 0.99, score.ToString());
        Assert.True(score.LargestChance <= 1e-7, score.ToString());

        // Honest errors: what is predicted is what is seen, to a third.
        Assert.True(score.CentrePull is > 0.67 and < 1.33, score.ToString());
        Assert.True(score.AnglePull is > 0.67 and < 1.33, score.ToString());
    }

    private static int Seed(int run, int number) => (run * 1_000_003) + number;

    private static (StarList List, SolveRequest Request) Blind(
        int number,
        double leastField,
        double mostField
    )
    {
        var list = new StarListMaker(Seed(1, number)).Make(leastField, mostField);
        return (list, list.Request);
    }

    private static (StarList List, SolveRequest Request) Hinted(
        int number,
        double leastField,
        double mostField
    )
    {
        var maker = new StarListMaker(Seed(2, number));
        var list = maker.Make(leastField, mostField);
        return (list, WithHint(maker, list));
    }

    /// <summary>A hint within two field widths, its scale within 3 %.</summary>
    private static SolveRequest WithHint(StarListMaker maker, StarList list) =>
        list.Request with
        {
            Near = list.Centre.Offset(
                PositionAngle.FromDegrees(maker.Uniform(0.0, 360.0)),
                list.Scale * (list.Width * maker.Uniform(0.0, 2.0))
            ),
            Scale = list.Scale * maker.Uniform(0.97, 1.03),
        };
}
