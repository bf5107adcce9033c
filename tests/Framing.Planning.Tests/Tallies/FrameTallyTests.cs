using Framing.Sky;

namespace Framing.Planning.Tests;

public sealed class FrameTallyTests
{
    private static readonly FramedPlan Plan = Requests.Framed(
        Requests.Of(
            Requests.Box(40.0, 20.0, 2.9, 8.0, 90.0),
            new Requests.Turn(0.0),
            grid: Mosaics.GridWish.Fixed(2, 1)
        )
    );

    private static readonly DateTime Dusk = new(2026, 12, 5, 20, 0, 0, DateTimeKind.Utc);

    private static readonly TallyGoal[] Goals =
    [
        new("H-alpha", 180.0, 3600.0),
        new("O-III", 300.0, 1800.0),
    ];

    private int count;

    [Fact]
    public void Of_FramesOfBothPanels_AddsUpByFilterAndLength()
    {
        var tally = Tally([
            .. Many(10, 1, "H-alpha", 180.0),
            .. Many(2, 1, "h alpha", 60.0),
            .. Many(3, 2, "O-III", 300.0),
        ]);
        Assert.Equal(
            [new("H-alpha", 60.0, 2, 0, 120.0), new("H-alpha", 180.0, 10, 0, 1800.0)],
            tally.Panels[0].ByFilter
        );
        Assert.Equal([new("O-III", 300.0, 3, 0, 900.0)], tally.Panels[1].ByFilter);
        Assert.Equal(1.0, tally.Panels[0].CoveredFraction, 1e-6);

        // Half an hour of the hour of H-alpha, nothing of the half hour of O-III; unlike lengths are not added up.
        Assert.Equal(1800.0 / 5400.0, tally.Panels[0].GoalFraction, 1e-9);
        Assert.Equal(900.0 / 5400.0, tally.Panels[1].GoalFraction, 1e-9);
        Assert.Empty(tally.LeftOut);
    }

    [Fact]
    public void Of_FramesOfBothPanels_SaysWhatToShootNext()
    {
        var tally = Tally([.. Many(10, 1, "H-alpha", 180.0), .. Many(3, 2, "O-III", 300.0)]);

        // The panel that is further behind first; one sub in five will be lost: 3600 s / 180 s / 0.8 = 25.
        Assert.Equal(
            [
                new(2, "H-alpha", 180.0, 25, 3600.0),
                new(2, "O-III", 300.0, 4, 900.0),
                new(1, "H-alpha", 180.0, 13, 1800.0),
                new(1, "O-III", 300.0, 8, 1800.0),
            ],
            tally.Next
        );
    }

    [Fact]
    public void Of_PanelShotAside_NamesTheHole()
    {
        var tally = Tally(Many(6, 1, "H-alpha", 180.0).ToList());
        var panels = Plan.Panels;
        var field = Plan.Request.Rig.Field;
        Assert.InRange(tally.Panels[1].CoveredFraction, 0.0, 0.0);
        Assert.InRange(tally.Cover.CoveredFraction, 0.5, 0.6);
        Assert.InRange(
            tally.Cover.Missing.SquareDegrees,
            field.Area.SquareDegrees * 0.8,
            field.Area.SquareDegrees * 0.9
        );

        // The hole, and at most a sliver at a corner of the panel that was shot.
        Assert.True(
            tally.Cover.Uncovered.Max(region => region.Area.SquareDegrees)
                > 0.999 * tally.Cover.Missing.SquareDegrees
        );
        Assert.Equal(2, panels.Count);
    }

    [Fact]
    public void Of_TrailedCloudyAndBrightFrames_LeavesThemOutWithTheReason()
    {
        var frames = Many(8, 1, "H-alpha", 180.0).ToList();
        frames[1] = frames[1] with { Elongation = 2.1 };
        frames[2] = frames[2] with { Stars = 100, Background = 1500.0 };
        frames[3] = frames[3] with { Background = 2500.0 };
        frames[4] = frames[4] with { Fault = "too few stars: 3 found", Pose = null };
        var tally = Tally(frames);
        Assert.Equal([new("H-alpha", 180.0, 4, 3, 720.0)], tally.Panels[0].ByFilter);
        string Reason(int i) => tally.LeftOut.Single(left => left.File == frames[i].File).Reason;
        Assert.StartsWith("trailed: its stars are 2.1 times", Reason(1), StringComparison.Ordinal);
        Assert.StartsWith(
            "cloud: it shows 100 stars where the panel's better frames show 400",
            Reason(2),
            StringComparison.Ordinal
        );
        Assert.Contains("1.5 times their background", Reason(2), StringComparison.Ordinal);
        Assert.Contains("2.5 times the panel's norm", Reason(3), StringComparison.Ordinal);
        Assert.StartsWith("too few stars", Reason(4), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_CopiesUnderOtherNames_CountsEachOnce()
    {
        var frames = Many(4, 1, "H-alpha", 180.0).ToList();
        frames.Add(frames[0] with { File = "copy.fits", Filter = null });
        var tally = Tally(frames);
        Assert.Equal(4, Assert.Single(tally.Panels[0].ByFilter).Frames);
        Assert.Equal(1, tally.Doubles);
    }

    [Fact]
    public void Of_FramesOfElsewhere_SaysHowFar()
    {
        var frame = Shot(1, "H-alpha", 180.0) with
        {
            Pose = new CameraPose(SkyDirection.FromDegrees(140.0, 20.0), PositionAngle.North),
        };
        Assert.Matches(
            @"another part of the sky: 9\d\.\d° from panel [12]",
            Assert.Single(Tally([frame]).LeftOut).Reason
        );
    }

    [Fact]
    public void Of_FlatsAndDarks_ListsThemApart()
    {
        var flat = Shot(1, "H-alpha", 2.0) with { Kind = ShotKind.Flat, Pose = null };
        var tally = Tally([flat, flat with { Kind = ShotKind.Dark, Key = "d", File = "d.fits" }]);
        Assert.Empty(tally.LeftOut);
        Assert.Equal([ShotKind.Flat, ShotKind.Dark], tally.Calibration.Select(frame => frame.Kind));
    }

    [Theory]
    [InlineData(false, false, 1)]
    [InlineData(true, false, 1)]
    [InlineData(false, true, 0)]
    public void Of_CameraTurnedBetweenFrames_WantsNewFlats(
        bool flatsBefore,
        bool flatsAfter,
        int warnings
    )
    {
        List<ShotFrame> frames = [.. Many(4, 1, "H-alpha", 180.0)];
        if (flatsBefore)
        {
            frames.Add(Flat());
        }

        frames.AddRange(
            Many(4, 1, "H-alpha", 180.0)
                .Select(frame =>
                    frame with
                    {
                        Pose = frame.Pose!.Value with
                        {
                            PositionAngle = frame.Pose.Value.PositionAngle.TurnedBy(
                                Angle.FromDegrees(3.2)
                            ),
                        },
                    }
                )
        );
        if (flatsAfter)
        {
            frames.Add(Flat());
        }

        var tally = Tally(frames);
        Assert.Equal(warnings, tally.Warnings.Count);
        Assert.All(
            tally.Warnings,
            warning => Assert.Contains("changed by 3.2°", warning, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Of_FramesOfALongerLens_CoverTheirPartOfThePanel()
    {
        var small = Shot(1, "H-alpha", 180.0) with
        {
            Field = new(
                Plan.Request.Rig.Field.TangentWidth / 2.0,
                Plan.Request.Rig.Field.TangentHeight / 2.0
            ),
        };
        var panel = Tally([small]).Panels[0];
        Assert.Equal(0.25, panel.CoveredFraction, 0.001);
        Assert.Equal(1, panel.ByFilter[0].Frames);
    }

    [Fact]
    public void Of_FramesInAnotherOrder_IsTheSame()
    {
        List<ShotFrame> frames = [.. Many(6, 1, "H-alpha", 180.0), .. Many(6, 2, "O-III", 300.0)];
        frames[3] = frames[3] with { Stars = 10 };
        var one = Tally(frames);
        frames.Reverse();
        var other = Tally(frames);
        Assert.Equal(
            one.Panels.SelectMany(p => p.ByFilter),
            other.Panels.SelectMany(p => p.ByFilter)
        );
        Assert.Equal(one.LeftOut, other.LeftOut);
        Assert.Equal(one.Next, other.Next);
    }

    private static PlanTally Tally(IReadOnlyList<ShotFrame> frames) =>
        FrameTally.Of(
            new()
            {
                Plan = Plan,
                Goals = Goals,
                ExpectedLoss = 0.2,
                Frames = frames,
            }
        );

    private IEnumerable<ShotFrame> Many(int frames, int panel, string filter, double seconds)
    {
        for (var i = 0; i < frames; i++)
        {
            yield return Shot(panel, filter, seconds);
        }
    }

    private ShotFrame Shot(int panel, string filter, double seconds)
    {
        count++;
        var planned = Plan.Panels[panel - 1];
        return new()
        {
            File = FormattableString.Invariant($"{count:000}.fits"),
            Key = FormattableString.Invariant($"key {count}"),
            Kind = ShotKind.Light,
            At = Dusk.AddMinutes(5 * count),
            ExposureSeconds = seconds,
            Filter = filter,
            Pose = new CameraPose(planned.Centre, planned.PositionAngle),
            Field = Plan.Request.Rig.Field,
            Stars = 400,
            Background = 1000.0,
            Elongation = 1.1,
        };
    }

    private ShotFrame Flat() => Shot(1, "H-alpha", 2.0) with { Kind = ShotKind.Flat, Pose = null };
}
