using Framing.Sky;

namespace Framing.Planning.Tests;

/// <summary>A simulated mount does what the check says, from 2° away.</summary>
public sealed class SimulatedEveningTests
{
    private static readonly OfDateFrame Time = OfDateFrame.At(
        TerrestrialTime.FromUtc(Checks.Evening)
    );

    /// <summary>Arc minutes: closer than the last step must come, keys are left alone.</summary>
    private const double GoodEnough = 0.45;

    [Fact]
    public void Check_ThousandMountsTwoDegreesOff_AreBroughtInByEachStep()
    {
        double worstFirst = 0.0,
            worstSecond = 0.0,
            worstThird = 0.0,
            worstLearned = 0.0;
        for (var run = 0; run < 1000; run++)
        {
            var random = new Random(4_000 + run);
            var setUp = SetUp(random);
            var first = Step(setUp, Checks.Handling, out _, out _);
            var second = Step(setUp, Checks.Handling, out _, out _);
            var third = Step(setUp, Checks.Handling, out _, out _);
            worstFirst = Math.Max(worstFirst, first);
            worstSecond = Math.Max(worstSecond, second);
            worstThird = Math.Max(worstThird, third);

            // Again with what the first move has taught.
            setUp = SetUp(new Random(4_000 + run));
            Step(setUp, Checks.Handling, out var check, out var after);
            var learned = KeyLearning.AfterMove(setUp.Handling(Checks.Handling), check, after);
            worstLearned = Math.Max(worstLearned, Step(setUp, learned, out _, out _));
        }

        Assert.InRange(worstFirst, 1.0, 13.0);
        Assert.InRange(worstSecond, 0.1, 1.5);
        Assert.InRange(worstThird, 0.0, 0.5);
        Assert.InRange(worstLearned, 0.0, 0.5);
    }

    private static Evening SetUp(Random random)
    {
        var ra = 360.0 * random.NextDouble();
        var dec = -80.0 + (160.0 * random.NextDouble());
        var plan = Checks.Plan(ra, dec);
        var start = Time.ToOfDate(
            plan.Panels[0]
                .Centre.Offset(
                    PositionAngle.FromDegrees(360.0 * random.NextDouble()),
                    Angle.FromDegrees(2.0)
                )
        );
        var adds = random.NextDouble() < 0.5;
        return new(
            plan,
            new SimulatedMount(
                start.RightAscension.Degrees,
                start.Declination.Degrees,
                -0.1 + (0.2 * random.NextDouble()),
                3.0 / 60.0,
                adds
            ),
            adds
        );
    }

    /// <summary>One frame, its check, and the keys it asks for; answers how far the mount is off afterwards, arc minutes.</summary>
    private static double Step(
        Evening evening,
        MountHandling handling,
        out FrameCheck check,
        out SeenFrame after
    )
    {
        check = Checks.Check(evening.Plan, evening.Frame(), evening.Handling(handling));
        after = evening.Frame();
        if (check.TotalNeeded.Arcminutes < GoodEnough)
        {
            return check.TotalNeeded.Arcminutes;
        }

        foreach (var hold in check.Moves)
        {
            evening.Mount.Press(hold);
            evening.Mount.Wait(2.0);
        }

        evening.Mount.Wait(60.0);
        after = evening.Frame();
        var off = after.Pose.Centre.SeparationTo(evening.Plan.Panels[0].Centre).Arcminutes;

        // Never the wrong way.
        Assert.InRange(off, 0.0, check.TotalNeeded.Arcminutes);
        return off;
    }

    private sealed record Evening(FramedPlan Plan, SimulatedMount Mount, bool Adds)
    {
        public MountHandling Handling(MountHandling handling) =>
            handling with
            {
                KeyAddsToTracking = Adds,
            };

        public SeenFrame Frame() => Checks.Frame(Plan, Time.ToIcrs(Mount.OfDate), 20.0);
    }
}
