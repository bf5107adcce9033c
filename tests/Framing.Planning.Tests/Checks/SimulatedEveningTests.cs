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

    /// <summary>
    /// A mount that points up to 2° beside what is typed, differently on each try by a scatter of its own: after the frame
    /// the corrected coordinates are typed as the hand control takes them.
    /// </summary>
    [Theory]
    [InlineData(EntryFormat.HmsDms)]
    [InlineData(EntryFormat.HmDm)]
    [InlineData(EntryFormat.Degrees)]
    public void Retype_ThousandMountsTwoDegreesOff_PointWithinAMinuteAndTheirScatter(
        EntryFormat format
    )
    {
        for (var run = 0; run < 1000; run++)
        {
            var random = new Random(9_000 + run);
            var dec = -80.0 + (160.0 * random.NextDouble());
            var plan = Checks.Plan(360.0 * random.NextDouble(), dec);
            var frame = random.NextDouble() < 0.5 ? GotoFrame.OfDate : GotoFrame.J2000;
            plan = plan with
            {
                Request = plan.Request with { EntryFormat = format, GotoFrame = frame },
            };
            var panel = plan.Panels[0].Centre;
            var place = frame == GotoFrame.OfDate ? Time.ToOfDate(panel) : panel;
            var wrong = place.Offset(
                PositionAngle.FromDegrees(360.0 * random.NextDouble()),
                Angle.FromDegrees(2.0)
            );
            var offset = MountOffset.Between(place, wrong);
            var (scatterEast, scatterNorth) = (Scatter(random), Scatter(random));

            // Where the mount points when something is typed: its offset on the axes, its scatter on the sky.
            SkyDirection Pointed(SkyDirection typed, double scatter)
            {
                var there = SkyDirection.FromRaDec(
                    typed.RightAscension + offset.RightAscension,
                    typed.Declination + offset.Declination
                );
                there = there
                    .Offset(PositionAngle.East, Angle.FromArcminutes(scatter * scatterEast))
                    .Offset(PositionAngle.North, Angle.FromArcminutes(scatter * scatterNorth));
                return frame == GotoFrame.OfDate ? Time.ToIcrs(there) : there;
            }

            // One side of the meridian shows the picture upside down on a mount that flips.
            var flipped = random.NextDouble() < 0.5 ? 200.0 : 20.0;
            var before = Pointed(place, 0.0);
            var check = Checks.Check(plan, Checks.Frame(plan, before, flipped));
            Assert.Equal([CheckStep.Retype], check.Steps);
            Assert.True(
                CoordinateReader
                    .ReadDirection($"{check.RetypeRa}, {check.RetypeDec}")
                    .TryGet(out var typed, out _)
            );
            var off = Pointed(typed, 1.0).SeparationTo(panel).Arcminutes;
            Assert.InRange(off, 0.0, 1.0 + double.Hypot(scatterEast, scatterNorth));
        }
    }

    /// <summary>Minutes of arc, evenly from -1.5 to +1.5.</summary>
    private static double Scatter(Random random) => -1.5 + (3.0 * random.NextDouble());

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
            adds,
            random.NextDouble() < 0.5 ? 200.0 : 20.0
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

    /// <summary>One mount on its way; beyond the meridian a mount that flips shows the picture upside down.</summary>
    private sealed record Evening(FramedPlan Plan, SimulatedMount Mount, bool Adds, double Angle)
    {
        public MountHandling Handling(MountHandling handling) =>
            handling with
            {
                KeyAddsToTracking = Adds,
            };

        public SeenFrame Frame() => Checks.Frame(Plan, Time.ToIcrs(Mount.OfDate), Angle);
    }
}
