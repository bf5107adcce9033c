using Framing.Sky;

namespace Framing.Planning.Tests;

public sealed class FrameCheckerTests
{
    private static readonly OfDateFrame Time = OfDateFrame.At(
        TerrestrialTime.FromUtc(Checks.Evening)
    );

    [Fact]
    public void Check_FrameOnThePanel_IsWithin()
    {
        var plan = Checks.Plan(40.0, 61.0);
        var check = Checks.Check(plan, Checks.Frame(plan, plan.Panels[0].Centre, 20.0));
        Assert.Equal(CheckVerdict.Within, check.Verdict);
        Assert.Empty(check.Steps);
        Assert.Empty(check.Moves);
        Assert.Equal(1.0, check.CoveredFraction, 1e-9);
        Assert.Equal(0.0, check.TurnCamera.Degrees, 1e-6);
    }

    [Fact]
    public void Check_FrameUpsideDown_IsTheSameFrame()
    {
        var plan = Checks.Plan(40.0, 61.0);
        var check = Checks.Check(plan, Checks.Frame(plan, plan.Panels[0].Centre, 200.0));
        Assert.Equal(CheckVerdict.Within, check.Verdict);
        Assert.Equal(0.0, check.TurnCamera.Degrees, 1e-6);
    }

    [Theory]
    [InlineData(14.0, false, 6.0)]
    [InlineData(26.0, false, -6.0)]
    [InlineData(14.0, true, -6.0)]
    public void Check_CameraTurned_SaysTurnThenNewFrame(
        double angle,
        bool mirrored,
        double expected
    )
    {
        // A position angle grows counter-clockwise on the sky as one looks at it: from behind the camera, too, unless a
        // mirror is in between.
        var plan = Checks.Plan(40.0, 61.0, mirrored: mirrored);
        var check = Checks.Check(plan, Checks.Frame(plan, plan.Panels[0].Centre, angle));
        Assert.Equal(CheckVerdict.NotYet, check.Verdict);
        Assert.Equal([CheckStep.Turn, CheckStep.NewFrame], check.Steps);
        Assert.Equal(expected, check.TurnCamera.Degrees, 1e-6);
    }

    [Fact]
    public void Check_CameraPlanned359AndSeenAt1_TurnsTheShortWay()
    {
        // 0.9° seen, 359.4° planned: 1.5° too far.
        var plan = Checks.Plan(40.0, 20.0, 359.4);
        var check = Checks.Check(plan, Checks.Frame(plan, plan.Panels[0].Centre, 0.9));
        Assert.Equal(-1.5, check.TurnCamera.Degrees, 1e-6);
    }

    [Fact]
    public void Check_FrameTooFarWest_MovesEastAndStarsGoTheOtherWay()
    {
        var plan = Checks.Plan(40.0, 20.0, 0.0);
        var panel = plan.Panels[0].Centre;
        var check = Checks.Check(
            plan,
            Checks.Frame(
                plan,
                panel.Offset(PositionAngle.FromDegrees(270.0), Angle.FromArcminutes(20.0)),
                0.0
            )
        );
        Assert.Equal(20.0, check.EastNeeded.Arcminutes, 0.15);
        Assert.Equal([CheckStep.Move], check.Steps);

        // East lies left in a picture with north up: to get there the stars must run to the right.
        Assert.True(check.StarsMustMove.RightFraction > 0.05);
        Assert.Equal(MountDirection.East, check.Moves[0].Towards);
        Assert.Equal("►", check.Moves[0].Key);
        Assert.True(check.MotionOfMoves[0].RightFraction > 0.0);

        // The last hold in right ascension ends from the finish side.
        Assert.Equal(
            MountDirection.West,
            check
                .Moves.Last(hold => hold.Towards is MountDirection.East or MountDirection.West)
                .Towards
        );
        Assert.All(
            check.Moves,
            hold =>
                Assert.InRange(
                    hold.Seconds,
                    KeyHolds.ShortestSeconds - 1e-9,
                    KeyHolds.LongestSeconds + 1e-9
                )
        );
    }

    [Fact]
    public void Check_FarOff_OffersTypingFirst()
    {
        var plan = Checks.Plan(40.0, 20.0);
        var panel = plan.Panels[0].Centre;
        var check = Checks.Check(
            plan,
            Checks.Frame(plan, panel.Offset(PositionAngle.East, Angle.FromArcminutes(50.0)), 20.0)
        );
        Assert.Equal([CheckStep.Retype], check.Steps);

        // It pointed 50' too far east: type as much less.
        var typed = Time.ToOfDate(panel);
        Assert.Equal(
            -50.0,
            (check.RetypePlace.RightAscension - typed.RightAscension).WrappedSigned.Arcminutes
                * Math.Cos(typed.Declination.Radians),
            0.3
        );
    }

    [Fact]
    public void Check_AnotherPartOfTheSky_IsTheWrongField()
    {
        var plan = Checks.Plan(40.0, 20.0);
        var check = Checks.Check(
            plan,
            Checks.Frame(plan, SkyDirection.FromDegrees(60.0, 20.0), 20.0)
        );
        Assert.Equal(CheckVerdict.WrongField, check.Verdict);
        Assert.Equal([CheckStep.Retype], check.Steps);
        Assert.Equal(0.0, check.CoveredFraction);
    }

    [Fact]
    public void Check_OffsetBetweenJ2000AndOfDate_IsNamed()
    {
        var plan = Checks.Plan(40.0, 20.0);
        var figures = Time.ToOfDate(plan.Panels[0].Centre);
        var check = Checks.Check(plan, Checks.Frame(plan, figures, 20.0));
        Assert.Contains(
            "mount.goto_frame = \"J2000\"",
            Assert.Single(check.Warnings),
            StringComparison.Ordinal
        );

        // Ten minutes elsewhere it is an error like any other.
        check = Checks.Check(
            plan,
            Checks.Frame(
                plan,
                figures.Offset(PositionAngle.North, Angle.FromArcminutes(10.0)),
                20.0
            )
        );
        Assert.Empty(check.Warnings);
    }

    [Fact]
    public void Check_SkyMirroredAtTheEquator_GivesTheMirroredAnswer()
    {
        // Turned about the equator, north and south change places and so does the sense of a turn; east stays.
        var north = Checks.PlanAt(Time.ToIcrs(SkyDirection.FromDegrees(40.0, 45.0)), 30.0);
        var south = Checks.PlanAt(Time.ToIcrs(SkyDirection.FromDegrees(40.0, -45.0)), 150.0);
        var up = Check(north, SkyDirection.FromDegrees(39.0, 45.5), 25.0);
        var down = Check(south, SkyDirection.FromDegrees(39.0, -45.5), 155.0);
        Assert.Equal(up.EastNeeded.Arcminutes, down.EastNeeded.Arcminutes, 1e-6);
        Assert.Equal(up.NorthNeeded.Arcminutes, -down.NorthNeeded.Arcminutes, 1e-6);
        Assert.Equal(up.RightAscensionNeeded.Degrees, down.RightAscensionNeeded.Degrees, 1e-9);

        // The north of J2000 is not that of date: the turn agrees but for that, 0.2°.
        Assert.Equal(up.TurnCamera.Degrees, -down.TurnCamera.Degrees, 0.5);
        Assert.True(up.TurnCamera.Degrees > 3.0);

        static FrameCheck Check(FramedPlan plan, SkyDirection ofDate, double angle) =>
            Checks.Check(plan, Checks.Frame(plan, Time.ToIcrs(ofDate), angle));
    }

    [Theory]
    [InlineData(10.0, 88.0, 60.0, 87.5, 33.0)]
    [InlineData(350.0, 88.5, 170.0, 88.2, 210.0)]
    [InlineData(120.0, -88.0, 20.0, -88.6, 75.0)]
    public void Check_CameraRigidOnItsMountNearThePole_TurnsByWhatItIsOff(
        double ra,
        double dec,
        double panelRa,
        double panelDec,
        double angle
    )
    {
        // A rigid mount in vectors: the camera's up direction is a fixed mixture of the axis's east and north.
        var start = SkyDirection.FromDegrees(ra, dec);
        var end = SkyDirection.FromDegrees(panelRa, panelDec);
        var seen = Rigid(start, angle);
        var arrived = Rigid(end, angle);
        var plan = Checks.PlanAt(arrived.Centre, arrived.PositionAngle.Degrees + 3.0);
        var check = Checks.Check(plan, Checks.Frame(plan, seen.Centre, seen.PositionAngle.Degrees));
        Assert.Equal(3.0, check.TurnCamera.Degrees, 0.01);

        static CameraPose Rigid(SkyDirection ofDate, double angle)
        {
            // From of date to J2000 by two points: the middle and one a little further up.
            var (sin, cos) = Math.SinCos(double.DegreesToRadians(angle));
            var above = SkyDirection.FromVector(
                ofDate.Vector + (((ofDate.North * cos) + (ofDate.East * sin)) * 1e-4)
            );
            var centre = Time.ToIcrs(ofDate);
            return new(centre, centre.PositionAngleTo(Time.ToIcrs(above)));
        }
    }

    [Fact]
    public void Check_RetypedOnAMountWithAnOffset_GetsWithinItsScatter()
    {
        var random = new Random(11);
        for (var run = 0; run < 200; run++)
        {
            var plan = Checks.Plan(
                360.0 * random.NextDouble(),
                -75.0 + (150.0 * random.NextDouble())
            );
            var offset = new MountOffset(
                Angle.FromDegrees(-2.0 + (4.0 * random.NextDouble())),
                Angle.FromDegrees(-2.0 + (4.0 * random.NextDouble()))
            );
            var wanted = Time.ToOfDate(plan.Panels[0].Centre);
            var check = Checks.Check(plan, Checks.Frame(plan, Time.ToIcrs(Point(wanted)), 20.0));
            var again = Time.ToIcrs(Point(check.RetypePlace));
            Assert.True(again.SeparationTo(plan.Panels[0].Centre).Arcminutes < 1.0);
            Assert.Equal(offset.Declination.Degrees, check.LearnedOffset.Declination.Degrees, 1e-9);

            SkyDirection Point(SkyDirection typed) =>
                SkyDirection.FromRaDec(
                    typed.RightAscension + offset.RightAscension,
                    typed.Declination + offset.Declination
                );
        }
    }

    [Fact]
    public void Check_NumberThatIsNotThere_Throws()
    {
        var plan = Checks.Plan(40.0, 20.0);
        var request = new CheckRequest
        {
            Plan = plan,
            Frame = Checks.Frame(plan, plan.Panels[0].Centre, 20.0),
            Handling = Checks.Handling,
            PanelNumber = 7,
        };
        Assert.Contains(
            "not 7",
            Assert.Throws<ArgumentException>(() => FrameChecker.Check(request)).Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(false, 110.0, 135.0)]
    [InlineData(true, 110.0, 85.0)]
    public void Dial_LearnedFromOneFrame_GivesTheSetting(
        bool mirrored,
        double reading,
        double expected
    )
    {
        var plan = Checks.Plan(40.0, 61.0, mirrored: mirrored);
        var frame = Checks.Frame(plan, plan.Panels[0].Centre, 355.0);
        var zero = FrameChecker.DialZeroFrom(frame, Angle.FromDegrees(reading));
        var check = FrameChecker.Check(
            new()
            {
                Plan = plan,
                Frame = frame,
                Handling = Checks.Handling,
                DialZero = zero,
            }
        );

        // From 355° to 20° the body turns by 25°, counter-clockwise unless mirrored.
        Assert.Equal(expected, check.Dial!.Value.Degrees, 1e-6);
    }
}
