using Framing.Sky;

namespace Framing.Planning.Tests;

/// <summary>Keys of a simulated mount are learned from the frames before and after they were held.</summary>
public sealed class KeyTrialTests
{
    private static readonly OfDateFrame Time = OfDateFrame.At(
        TerrestrialTime.FromUtc(Checks.Evening)
    );

    private static readonly FramedPlan Plan = Checks.Plan(40.0, 50.0);

    [Theory]
    [InlineData(MountDirection.East, true)]
    [InlineData(MountDirection.West, true)]
    [InlineData(MountDirection.North, true)]
    [InlineData(MountDirection.East, false)]
    [InlineData(MountDirection.West, false)]
    [InlineData(MountDirection.North, false)]
    public void Judge_KeyOfAMountWithPlay_FindsTheRate(MountDirection towards, bool adds)
    {
        for (var run = 0; run < 50; run++)
        {
            var random = new Random(700 + run);
            var error = -0.1 + (0.2 * random.NextDouble());
            var mount = new SimulatedMount(
                360.0 * random.NextDouble(),
                -80.0 + (160.0 * random.NextDouble()),
                error,
                3.0 / 60.0,
                adds
            );
            var finding = Press(mount, towards, adds, Checks.Handling, 20.0, 10.0).Finding!;
            Assert.Equal(towards, finding.Went);
            Assert.Equal(1.0 + error, finding.RateFactor, 0.001);
            Assert.Equal("3", finding.Speed.Label);
            Assert.Null(finding.Backlash);
        }
    }

    [Fact]
    public void Judge_AwayFromTheFinishSideWithAKnownRate_FindsThePlay()
    {
        for (var run = 0; run < 50; run++)
        {
            var random = new Random(800 + run);
            var error = -0.1 + (0.2 * random.NextDouble());
            var play = 1.0 + (8.0 * random.NextDouble());
            var mount = new SimulatedMount(100.0, 30.0, error, play / 60.0, true);
            var rate = Press(mount, MountDirection.North, true, Checks.Handling, 20.0, 10.0);
            var finding = Press(
                mount,
                MountDirection.South,
                true,
                rate.Finding!.Learned,
                20.0,
                10.0
            ).Finding!;
            Assert.Equal(play, finding.Backlash!.Value.Arcminutes, 0.05);
            Assert.Equal(play, finding.Learned.Declination.Backlash.Arcminutes, 0.05);
        }
    }

    [Fact]
    public void AfterMove_PlayLargerThanAllowedFor_IsLearned()
    {
        // 9′ of play where 3′ were believed: the way back of 6′ never takes it up.
        var mount = new SimulatedMount(40.0, 50.0, 0.05, 9.0 / 60.0, true);
        var handling = Checks.Handling with
        {
            Declination = Checks.Handling.Declination with { RateFactor = 1.05 },
        };
        var panel = Time.ToIcrs(SkyDirection.FromDegrees(40.0, 49.5));
        var plan = Checks.PlanAt(panel, 20.0);
        var check = Checks.Check(plan, Frame(plan, mount), handling);
        foreach (var hold in check.Moves)
        {
            mount.Press(hold);
        }

        mount.Wait(60.0);
        var learned = KeyLearning.AfterMove(handling, check, Frame(plan, mount));
        Assert.Equal(9.0, learned.Declination.Backlash.Arcminutes, 0.3);
        Assert.Equal(1.05, learned.Declination.RateFactor);
    }

    private static KeyResult Press(
        SimulatedMount mount,
        MountDirection towards,
        bool adds,
        MountHandling handling,
        double speed,
        double seconds
    )
    {
        var before = Frame(Plan, mount);
        mount.Press(new(towards, "key", new("3", speed), seconds));
        mount.Wait(60.0);
        return KeyTrial.Judge(
            handling with
            {
                KeyAddsToTracking = adds,
            },
            new(towards, null, seconds),
            before,
            Frame(Plan, mount)
        );
    }

    private static SeenFrame Frame(FramedPlan plan, SimulatedMount mount) =>
        Checks.Frame(plan, Time.ToIcrs(mount.OfDate), 20.0);
}
