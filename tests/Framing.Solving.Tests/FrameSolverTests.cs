using Framing.Catalogue;
using Framing.Sky;

namespace Framing.Solving.Tests;

public sealed class FrameSolverTests
{
    private static readonly StarList Field = new StarListMaker(77).Make(4.0, 5.0, leastStars: 60);

    [Fact]
    public void Solve_NothingFound_TooFewStars()
    {
        var answer = Solve(new([], 4144, 2822));
        Assert.Null(answer.Solution);
        Assert.Equal(SolveRefusal.TooFewStars, answer.Refusal);
    }

    [Fact]
    public void Solve_PlacesThatAreNoNumbers_CountAsNotFound()
    {
        DetectedStar[] broken =
        [
            new(new(double.NaN, 1.0), 5.0),
            new(new(1.0, double.PositiveInfinity), 5.0),
            new(new(1.0, 1.0), double.NaN),
        ];
        Assert.Equal(SolveRefusal.TooFewStars, Solve(new(broken, 4144, 2822)).Refusal);
        var with = Solve(Field.Request with { Detections = [.. broken, .. Field.Detections] });
        Assert.NotNull(with.Solution);
    }

    [Fact]
    public void Solve_AllDetectionsInOnePlace_Refused()
    {
        var heap = Enumerable.Repeat(new DetectedStar(new(100.0, 100.0), 9.0), 100).ToArray();
        Assert.Equal(SolveRefusal.MatchesNothing, Solve(new(heap, 4144, 2822)).Refusal);
    }

    [Fact]
    public void Solve_ARegularGrid_Refused()
    {
        // Hot columns, reflections and tiles of a daylight picture make figures that repeat.
        var grid = new List<DetectedStar>();
        for (var i = 0; i < 12; i++)
        {
            for (var j = 0; j < 8; j++)
            {
                grid.Add(new(new(150.0 + (350.0 * i), 150.0 + (350.0 * j)), 100.0 + i - j));
            }
        }

        Assert.Equal(SolveRefusal.MatchesNothing, Solve(new(grid, 4144, 2822)).Refusal);
    }

    [Fact]
    public void Solve_InAnyOrderOnAnyThread_SameAnswer()
    {
        var first = Solve(Field.Request);
        var random = new Random(3);
        var answers = new SolveAnswer[6];
        var lists = answers
            .Select(_ =>
            {
                var shuffled = Field.Detections.ToArray();
                random.Shuffle(shuffled);
                return shuffled;
            })
            .ToArray();
        Parallel.For(
            0,
            answers.Length,
            i => answers[i] = Solve(Field.Request with { Detections = lists[i] })
        );
        Assert.All(
            answers,
            answer =>
            {
                Assert.Equal(first.Guesses, answer.Guesses);
                Assert.Equal(first.Solution!.Centre, answer.Solution!.Centre);
                Assert.Equal(first.Solution.Fit.Linear.Matrix, answer.Solution.Fit.Linear.Matrix);
            }
        );
    }

    [Fact]
    public void Solve_WithAHintFarOff_MatchesNothing()
    {
        var answer = Solve(
            Field.Request with
            {
                Near = Field.Centre.Antipode,
                Scale = Field.Scale,
            }
        );
        Assert.Equal(SolveRefusal.MatchesNothing, answer.Refusal);
    }

    [Fact]
    public void Solve_WithAHintFarOff_IsFoundElsewhereIfAsked()
    {
        ReferenceStars.Embedded.Prepare(wholeSky: true);
        var request = Field.Request with
        {
            Near = Field.Centre.Antipode,
            Scale = Field.Scale * 2.0,
            ElsewhereToo = true,
        };
        var answer = Solve(request);
        Assert.NotNull(answer.Solution);
        Assert.Equal(SolveRefusal.None, answer.Refusal);
        Assert.InRange(answer.Solution.Centre.SeparationTo(Field.Centre) / Field.Scale, 0.0, 1.0);

        // The guesses at the wrong place count as well.
        Assert.True(answer.Guesses > Solve(Field.Request).Guesses);
    }

    [Fact]
    public void Solve_WithHalfAHint_IsSolved()
    {
        Assert.NotNull(Solve(Field.Request with { Near = Field.Centre }).Solution);
        Assert.NotNull(Solve(Field.Request with { Scale = Field.Scale }).Solution);
        Assert.Null(Solve(Field.Request with { Scale = Field.Scale * 1.2 }).Solution);
    }

    [Fact]
    public void Solve_ReversedRows_TurnsTheParity()
    {
        var answer = Solve(
            Field.Request with
            {
                Detections =
                [
                    .. Field.Detections.Select(star =>
                        star with
                        {
                            Position = star.Position with
                            {
                                Y = Field.Height + 1 - star.Position.Y,
                            },
                        }
                    ),
                ],
            }
        );
        Assert.NotNull(answer.Solution);
        Assert.Equal(!Field.Mirrored, answer.Solution.IsMirrored);
        Assert.InRange(answer.Solution.Centre.SeparationTo(Field.Centre) / Field.Scale, 0.0, 1.0);
    }

    [Theory]
    [InlineData(10.0, 90.0)]
    [InlineData(200.0, -89.6)]
    [InlineData(359.9, 1.0)]
    public void Solve_AtThePolesAndAcrossZero_IsSolved(double ra, double dec)
    {
        var list = PlainField(SkyDirection.FromDegrees(ra, dec), 3.82, null, 120);
        var solved = Solve(list.Request).Solution;
        Assert.NotNull(solved);
        Assert.InRange(solved.Centre.SeparationTo(list.Centre) / list.Scale, 0.0, 0.01);
        Assert.InRange(solved.Fit.RmsPixels, 0.0, 0.01);
    }

    [Fact]
    public void Solve_WithTheDate_FindsTheFastStarsToo()
    {
        // 61 Cygni moves by 5 arcsec a year; in 2090 it is 470 arcsec from where it was in 2000.
        var list = PlainField(SkyDirection.FromDegrees(316.7, 38.7), 3.82, null, 80, 2090.0);
        var with = Solve(list.Request).Solution;
        var without = Solve(list.Request with { JulianYear = 2000.0 }).Solution;
        Assert.NotNull(with);
        Assert.NotNull(without);
        Assert.Equal(80, with.Fit.Used.Count);
        Assert.True(without.Fit.Used.Count < 80);
        Assert.True(without.Fit.RmsPixels > 10.0 * with.Fit.RmsPixels);
    }

    [Fact]
    public void Solve_ANarrowField_NeedsTheDeeperTable()
    {
        // A made-up sky that goes deeper than the embedded one, as a table of the user would.
        var centre = SkyDirection.FromDegrees(40.0, 62.0);
        var deep = new MadeUpSky(5)
            .InCone(centre, Angle.FromDegrees(1.5), new() { FaintestMagnitude = 14.0 })
            .Select(star => new TableStar(star.Direction, star.VMagnitude))
            .ToList();
        Assert.True(deep.Count > 500);
        var list = PlainField(
            centre.Offset(PositionAngle.East, Angle.FromDegrees(0.3)),
            0.45,
            deep,
            100
        );
        var stars = ReferenceStars.FromTable(deep);
        var least = Angle.FromDegrees(0.2);
        Assert.Null(Solve(list.Request with { LeastField = least }).Solution);
        var blind = Solve(list.Request with { LeastField = least, Stars = stars }).Solution;
        Assert.NotNull(blind);
        Assert.InRange(blind.Centre.SeparationTo(list.Centre) / list.Scale, 0.0, 0.05);
        var hinted = Solve(
            list.Request with
            {
                Stars = stars,
                Near = centre,
                Scale = list.Scale * 1.02,
            }
        ).Solution;
        Assert.NotNull(hinted);
        Assert.Equal(blind.Centre, hinted.Centre);
    }

    [Fact]
    public void Solve_OfAWrongScale_Throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            Solve(Field.Request with { Scale = Angle.Zero })
        );

    [Fact]
    public async Task Solve_Stopped_Throws()
    {
        using var source = new CancellationTokenSource();
        await source.CancelAsync();
        Assert.Throws<OperationCanceledException>(() =>
            FrameSolver.Solve(Field.Request, source.Token)
        );
    }

    private static SolveAnswer Solve(SolveRequest request) =>
        FrameSolver.Solve(request, TestContext.Current.CancellationToken);

    /// <summary>A field of the demo's camera without losses or errors: its brightest stars, and those of a table.</summary>
    private static StarList PlainField(
        SkyDirection centre,
        double arcsecPerPixel,
        IReadOnlyList<TableStar>? table,
        int most,
        double year = 2026.0
    )
    {
        const int Width = 4144;
        const int Height = 2822;
        var scale = Angle.FromArcseconds(arcsecPerPixel);
        var wcs = new TanWorldCoordinates(
            new(0.5 * (Width + 1), 0.5 * (Height + 1)),
            centre,
            PixelMatrix.FromPositionAngle(PositionAngle.FromDegrees(33.0), scale, mirrored: false)
        );
        var seen = new List<DetectedStar>();
        var stars = StarCatalogue
            .Embedded.InCone(centre, scale * 2700.0, new() { JulianYear = year })
            .Select(star => (Place: star.At(year), Magnitude: star.VMagnitude))
            .Concat(
                (table ?? [])
                    .Where(star => star.Direction.SeparationTo(centre) <= scale * 2700.0)
                    .Select(star => (Place: star.Direction, star.Magnitude))
            )
            .OrderBy(star => star.Magnitude);
        foreach (var (place, magnitude) in stars)
        {
            if (
                seen.Count < most
                && wcs.TrySkyToPixel(place, out var pixel)
                && pixel.X is > 0.5 and < Width + 0.5
                && pixel.Y is > 0.5 and < Height + 0.5
            )
            {
                seen.Add(new(pixel, Math.Pow(10.0, -0.4 * magnitude)));
            }
        }

        return new(seen, Width, Height, seen.Count, centre, scale, 33.0, Mirrored: false, year);
    }
}
