using Framing.Sky;

namespace Framing.Nights.Tests;

public sealed class NightsStepTests
{
    private static readonly SkyDirection[] Pair =
    [
        SkyDirection.FromDegrees(37.0, 61.6),
        SkyDirection.FromDegrees(43.5, 60.4),
    ];

    [Fact]
    public void Plan_TwoPanels_BlocksKeepEveryRule()
    {
        var request = Meadow.Request(Pair) with { Filters = [Meadow.Red, Meadow.Teal] };
        var plan = NightsStep.Plan(request);
        var night = Assert.Single(plan.Nights);
        var sunset = Assert.Single(night.Sun.SunDown).Start;
        Assert.NotEmpty(night.Blocks);
        for (var i = 0; i < night.Blocks.Count; i++)
        {
            var block = night.Blocks[i];
            Assert.Contains(night.Dark, dark => dark.Start <= block.From && block.To <= dark.End);
            Assert.True(block.From >= sunset + request.Setup);
            Assert.Contains(
                night.Reachable[block.Panel - 1],
                window => window.Start <= block.From && block.To <= window.End
            );
            Assert.Equal(0, block.From.Second);
            Assert.Equal((int)Math.Floor(block.SubsToShoot * 0.8), block.SubsExpectedGood);
            Assert.True(block.Lowest.Degrees >= 25.0);
            Assert.True(block.Lowest <= block.Highest);
            Assert.InRange(block.MeanAirmass, 1.0, 2.4);

            // Exposures, read-outs between them, and a dither after every third sub.
            var least =
                (block.SubsToShoot * block.Filter.Sub)
                + ((block.SubsToShoot - 1) * block.Filter.Readout)
                + ((block.SubsToShoot - 1) / 3 * block.Filter.DitherTime);
            Assert.True(block.To - block.From >= least);
            if (i > 0)
            {
                var before = night.Blocks[i - 1];
                var pause = block.From - before.To - before.Filter.Readout;
                Assert.True(
                    pause
                        >= (
                            before.Panel == block.Panel
                                ? request.Focus + block.Filter.DitherTime
                                : request.Repoint
                        )
                );
            }
        }

        Assert.Equal(night.Blocks[^1].To, night.Flats!.Value.Start);
        Assert.Equal(TimeSpan.FromMinutes(15.0), night.Flats.Value.Length);
        foreach (var tally in plan.Tallies)
        {
            Assert.Equal(
                tally.SubsPlanned,
                plan.Blocks.Where(b => b.Panel == tally.Panel && b.Filter == tally.Filter)
                    .Sum(b => b.SubsToShoot)
            );
        }
    }

    [Fact]
    public void GoodSubs_TwoFilters_SharesAndLosses()
    {
        var request = Meadow.Request(Pair) with { Filters = [Meadow.Red, Meadow.Teal] };

        // 2 h at 2 : 1: 80 min of 3 min and 40 min of 5 min; one sub in five is lost.
        Assert.Equal(27, request.GoodSubs(Meadow.Red));
        Assert.Equal(34, request.SubsToShoot(Meadow.Red));
        Assert.Equal(8, request.GoodSubs(Meadow.Teal));
        Assert.Equal(10, request.SubsToShoot(Meadow.Teal));
    }

    [Fact]
    public void Plan_CameraTurnedAtEachPanel_FlatsBeforeEachTurn()
    {
        var request = Meadow.Request(Pair) with { TurnsCamera = true };
        var night = NightsStep.Plan(request).Nights[0];
        var change = Assert.Single(
            night.Blocks.Zip(night.Blocks.Skip(1)),
            pair => pair.First.Panel != pair.Second.Panel
        );
        Assert.True(change.Second.From - change.First.To >= request.Flats + request.Repoint);
    }

    [Fact]
    public void Plan_SameRequestTwice_SamePlan()
    {
        var request = Meadow.Request(Meadow.Grid(41.0, 61.0, 9)) with { Nights = 2 };
        Assert.Equal(NightsStep.Plan(request).Blocks, NightsStep.Plan(request).Blocks);
    }

    [Theory]
    [InlineData(52.0, 6, 21, DarknessWanted.Nautical)]
    [InlineData(69.7, 12, 21, DarknessWanted.Astronomical)]
    [InlineData(-90.0, 6, 21, DarknessWanted.Astronomical)]
    public void Plan_OddNights_Planned(double latitude, int month, int day, DarknessWanted darkness)
    {
        var plan = NightsStep.Plan(
            Meadow.Request(SkyDirection.FromDegrees(300.0, latitude < 0.0 ? -60.0 : 60.0)) with
            {
                Site = Meadow.At(latitude),
                Evening = new(2026, month, day),
                GoalPerPanel = TimeSpan.FromHours(1.0),
            }
        );
        Assert.Equal(darkness, plan.Nights[0].Darkness);
        Assert.False(plan.NothingToShoot);
        Assert.Equal(
            darkness != DarknessWanted.Astronomical,
            NightWords
                .Warnings(plan)
                .Any(words =>
                    words.Contains("does not get astronomically dark", StringComparison.Ordinal)
                )
        );
    }

    [Theory]
    [InlineData(69.7, 6, 21, 60.0, "no night: the Sun does not set")]
    [InlineData(60.0, 6, 21, 60.0, "no nautical darkness: the Sun stays above -12°")]
    [InlineData(46.2, 12, 5, -70.0, "Panel 1 is never in reach")]
    public void Nothing_NothingCanBeShot_SaysWhy(
        double latitude,
        int month,
        int day,
        double declination,
        string why
    )
    {
        var plan = NightsStep.Plan(
            Meadow.Request(SkyDirection.FromDegrees(300.0, declination)) with
            {
                Site = Meadow.At(latitude),
                Evening = new(2026, month, day),
            }
        );
        Assert.True(plan.NothingToShoot);
        var words = NightWords.Nothing(plan);
        Assert.NotNull(words);
        Assert.Contains(why, words, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Warnings_TooMuchWanted_SayWhatIsShortAndWhatToBeginWith()
    {
        var plan = NightsStep.Plan(
            Meadow.Request(Pair) with
            {
                GoalPerPanel = TimeSpan.FromHours(5.0),
            }
        );
        var tallies = plan.Tallies.OrderByDescending(tally => tally.Short).ToList();
        Assert.True(tallies[0].Short > TimeSpan.Zero);
        var words = NightWords.Warnings(plan)[0];
        Assert.StartsWith(
            FormattableString.Invariant(
                $"Panel {tallies[0].Panel} falls short by {DurationText.Of(tallies[0].Short)} ({tallies[0].SubsWanted - tallies[0].SubsPlanned} subs of H-alpha). Begin the second night with panel {tallies[0].Panel}."
            ),
            words,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Plan_NoFilter_TellsTheNightAlone()
    {
        var plan = NightsStep.Plan(Meadow.Request(Pair) with { Filters = [] });
        Assert.False(plan.NothingToShoot);
        Assert.Empty(plan.Blocks);
        Assert.NotEmpty(plan.Nights[0].Reachable[0]);
        Assert.Empty(NightWords.Warnings(plan));
    }

    public static TheoryData<string, NightsRequest> FortyPanels() =>
        new()
        {
            { "short", Forty(2.0) },
            { "filters", Forty(1.0) with { Filters = [Meadow.Red, Meadow.Teal] } },
            {
                "summer",
                Forty(0.5) with
                {
                    Panels = Meadow.Grid(300.0, 40.0, 40),
                    Evening = new(2026, 7, 10),
                }
            },
        };

    [Theory]
    [MemberData(nameof(FortyPanels), DisableDiscoveryEnumeration = true)]
    public void Plan_FortyPanelsFiveNights_Within3PercentOfTheBound(
        string name,
        NightsRequest request
    )
    {
        var plan = NightsStep.Plan(request);
        Assert.Equal(40, plan.Tallies.Select(tally => tally.Panel).Distinct().Count());
        Assert.False(plan.IsBest);
        Assert.True(
            plan.Gap <= 0.03,
            FormattableString.Invariant(
                $"{name}: {plan.LeastFraction} of {plan.LeastFractionBound}, {plan.Subs} of {plan.SubsBound}"
            )
        );
    }

    private static NightsRequest Forty(double hours) =>
        Meadow.Request(Meadow.Grid(41.0, 61.0, 40)) with
        {
            Nights = 5,
            GoalPerPanel = TimeSpan.FromHours(hours),
        };
}
