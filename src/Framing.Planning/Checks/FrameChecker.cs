using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Planning;

/// <summary>Holds a test frame against the plan.</summary>
public static class FrameChecker
{
    /// <summary>Beyond this, typing corrected coordinates is offered before keys.</summary>
    public static Angle RetypeFrom => Angle.FromArcminutes(30.0);

    /// <summary>Closer than this to the place a wrong frame of coordinates would lead to, that is taken to be the cause.</summary>
    private static readonly Angle SameAsWrongFrame = Angle.FromArcminutes(3.0);

    /// <summary>An axis that is closer than this is left alone.</summary>
    private static readonly Angle NotWorthAKey = Angle.FromArcminutes(0.1);

    /// <summary>Does the check.</summary>
    /// <param name="request">The framing, the frame, and the mount.</param>
    /// <returns>What is wrong, and what to do about it.</returns>
    /// <exception cref="ArgumentException">The framing has no panels, or no panel of that number.</exception>
    /// <remarks>
    /// Axes and north are those of date, since the mount turns about the pole of date: a camera left alone keeps its
    /// position angle against it while the mount moves to the panel. Coordinates of date are for the time of the frame.
    /// </remarks>
    public static FrameCheck Check(CheckRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        var plan = request.Plan;
        var frame = request.Frame;
        var panel = PanelOf(request);
        var time = OfDateFrame.At(TerrestrialTime.FromUtc(frame.At));
        var wanted = time.ToOfDate(panel.Centre);
        var seen = time.ToOfDate(frame.Pose.Centre);
        var upOfDate = AgainstPoleOfDate(time, frame.Pose);
        var total = seen.SeparationTo(wanted);
        var towards = seen.PositionAngleTo(wanted);
        var ra = (wanted.RightAscension - seen.RightAscension).WrappedSigned;
        var dec = wanted.Declination - seen.Declination;
        var turn =
            upOfDate.FrameTurnTo(AgainstPoleOfDate(time, new(panel.Centre, panel.PositionAngle)))
            * (frame.Mirrored ? -1.0 : 1.0);
        var tolerance = CheckTolerance.Of(plan);
        var covered = CoverageMeasure
            .Of(
                Mosaic.Grid(frame.Pose, frame.Field, default, 1, 1, frame.Mirrored, default),
                new([new SkyPolygon(panel.Corners)])
            )
            .TargetCoveredFraction;
        var moves = Moves(request.Handling, ra, dec, seen.Declination);

        // Place and frame as the hand control counts them.
        var (place, pointed) =
            plan.Request.GotoFrame == GotoFrame.OfDate
                ? (wanted, seen)
                : (panel.Centre, frame.Pose.Centre);
        var typed = request.Typed ?? request.CarriedOffset.Correct(place);
        var offset = request.MovedByKeys
            ? request.CarriedOffset
            : MountOffset.Between(typed, pointed);
        var retype = offset.Correct(place);
        var verdict =
            covered <= 0.0 ? CheckVerdict.WrongField
            : total <= tolerance.Place && turn.Magnitude <= tolerance.Turn ? CheckVerdict.Within
            : CheckVerdict.NotYet;
        return new()
        {
            Frame = frame,
            Panel = panel,
            Verdict = verdict,
            Steps = Steps(verdict, turn.Magnitude > tolerance.Turn, total),
            Tolerance = tolerance,
            TurnCamera = turn,
            EastNeeded = total * Math.Sin(towards.Radians),
            NorthNeeded = total * Math.Cos(towards.Radians),
            TotalNeeded = total,
            RightAscensionNeeded = ra,
            DeclinationNeeded = dec,
            Moves = moves,
            MotionOfMoves =
            [
                .. moves.Select(hold =>
                    Motion(request.Handling, frame, upOfDate, hold, seen.Declination)
                ),
            ],
            StarsMustMove = StarMotion.Of(upOfDate, frame.Mirrored, frame.Field, towards, total),
            Typed = typed,
            RetypePlace = retype,
            RetypeRa = EntryText.RightAscension(retype.RightAscension, plan.Request.EntryFormat),
            RetypeDec = EntryText.Declination(retype.Declination, plan.Request.EntryFormat),
            LearnedOffset = offset,
            Dial = request.DialZero is { } zero ? DialFor(zero, panel.PositionAngle, frame) : null,
            CoveredFraction = covered,
            Warnings = [.. Warnings(request, panel, time, wanted)],
        };
    }

    /// <summary>What the dial reads when up is north, learned from one frame and the dial's reading at it.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="reading">The dial's reading when it was taken.</param>
    /// <returns>The dial's zero, 0 to 360°, for dials whose figures grow counter-clockwise as seen from behind the camera.</returns>
    public static Angle DialZeroFrom(SeenFrame frame, Angle reading)
    {
        ArgumentNullException.ThrowIfNull(frame);
        return (reading - TurnOfBody(frame.Pose.PositionAngle, frame.Mirrored)).Wrapped;
    }

    private static Angle DialFor(Angle zero, PositionAngle planned, SeenFrame frame)
    {
        // Of the two settings that show the same frame, the one nearer to where the camera stands.
        var near = planned.FrameNear(frame.Pose.PositionAngle);
        return (zero + TurnOfBody(near, frame.Mirrored)).Wrapped;
    }

    private static Angle TurnOfBody(PositionAngle up, bool mirrored) =>
        Angle.FromDegrees(mirrored ? -up.Degrees : up.Degrees);

    /// <summary>The panel that a check is about: the one asked for, else the one whose middle is nearest to the frame's.</summary>
    /// <param name="request">The check.</param>
    /// <returns>The panel.</returns>
    /// <exception cref="ArgumentException">The framing has no panels, or no panel of that number.</exception>
    public static PlannedPanel PanelOf(CheckRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        var panels = request.Plan.Panels;
        if (panels.Count == 0)
        {
            throw new ArgumentException("The framing has no panels.", nameof(request));
        }

        return request.PanelNumber is { } number
            ? panels.FirstOrDefault(panel => panel.Number == number)
                ?? throw new ArgumentException(
                    FormattableString.Invariant(
                        $"The framing has panels 1 to {panels.Count}, not {number}."
                    ),
                    nameof(request)
                )
            : panels.MinBy(panel => panel.Centre.SeparationTo(request.Frame.Pose.Centre).Radians)!;
    }

    /// <summary>The pose's position angle against the north of date, with the aberration that moves both middle and north.</summary>
    private static PositionAngle AgainstPoleOfDate(OfDateFrame time, CameraPose pose)
    {
        // A little way up in the picture, carried over as the middle is: at declination 88° aberration alone is 0.1°.
        var above = pose.Centre.Offset(pose.PositionAngle, Angle.FromRadians(1e-4));
        return time.ToOfDate(pose.Centre).PositionAngleTo(time.ToOfDate(above));
    }

    private static IReadOnlyList<CheckStep> Steps(CheckVerdict verdict, bool turned, Angle total) =>
        verdict == CheckVerdict.Within ? []
        : turned && verdict != CheckVerdict.WrongField ? [CheckStep.Turn, CheckStep.NewFrame]
        : [total > RetypeFrom ? CheckStep.Retype : CheckStep.Move];

    private static List<KeyHold> Moves(MountHandling handling, Angle ra, Angle dec, Angle at)
    {
        var moves = new List<KeyHold>();
        if ((ra * Math.Cos(at.Radians)).Magnitude >= NotWorthAKey)
        {
            moves.AddRange(KeyHolds.InRightAscension(handling, ra));
        }

        if (dec.Magnitude >= NotWorthAKey)
        {
            moves.AddRange(KeyHolds.InDeclination(handling, dec));
        }

        return moves;
    }

    private static StarMotion Motion(
        MountHandling handling,
        SeenFrame frame,
        PositionAngle upOfDate,
        KeyHold hold,
        Angle declination
    )
    {
        var onAxis = KeyHolds.RateOf(handling, hold.Towards, hold.Speed.Sidereal) * hold.Seconds;
        var (towards, onSky) = hold.Towards switch
        {
            MountDirection.East => (90.0, onAxis * Math.Cos(declination.Radians)),
            MountDirection.West => (270.0, onAxis * Math.Cos(declination.Radians)),
            MountDirection.North => (0.0, onAxis),
            _ => (180.0, onAxis),
        };
        return StarMotion.Of(
            upOfDate,
            frame.Mirrored,
            frame.Field,
            PositionAngle.FromDegrees(towards),
            onSky
        );
    }

    private static IEnumerable<string> Warnings(
        CheckRequest request,
        PlannedPanel panel,
        OfDateFrame time,
        SkyDirection wanted
    )
    {
        var frame = request.Frame;
        var centre = frame.Pose.Centre;
        var asTyped = request.Plan.Request.GotoFrame;

        // What was typed, read in the other frame of coordinates: there the mount would point.
        var elsewhere = asTyped == GotoFrame.OfDate ? wanted : time.ToIcrs(panel.Centre);
        if (
            elsewhere.SeparationTo(centre) <= SameAsWrongFrame
            && panel.Centre.SeparationTo(centre) > SameAsWrongFrame * 2.0
        )
        {
            yield return asTyped == GotoFrame.OfDate
                ? "The frame lies where the hand control points when it takes coordinates of date for J2000: set mount.goto_frame = \"J2000\" and plan again, then type the new figures."
                : "The frame lies where the hand control points when it takes J2000 for coordinates of date: set mount.goto_frame = \"of-date\" and plan again, then type the new figures.";
        }

        if (frame.Mirrored != request.Plan.Request.Rig.Mirrored)
        {
            yield return frame.Mirrored
                ? "The picture is mirrored, which rig.mirrored = false does not expect: count the mirrors in the light path, or look whether the file's rows run top-down."
                : "The picture is not mirrored, which rig.mirrored = true does not expect: count the mirrors in the light path, or look whether the file's rows run top-down.";
        }
    }
}
