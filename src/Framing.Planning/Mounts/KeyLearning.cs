using Framing.Sky;

namespace Framing.Planning;

/// <summary>Learns how fast the axes of a mount really are, from what keys did.</summary>
public static class KeyLearning
{
    /// <summary>Shorter moves say little: reaction time and the error of the frames weigh too much.</summary>
    private static readonly Angle LeastMove = Angle.FromArcminutes(4.0);

    /// <summary>What lies outside is no rate but a mistake: another key, another speed, a slipped clutch.</summary>
    private const double LeastFactor = 0.5;

    private const double MostFactor = 2.0;

    /// <summary>Less than this is the error of hands and frames, no play.</summary>
    private static readonly Angle LeastSurplus = Angle.FromArcminutes(1.0);

    private const double LeastSurplusPart = 0.03;

    /// <summary>Learns from a move that was asked for and the frame that was taken after it.</summary>
    /// <param name="handling">The mount as it was known when the move was asked for.</param>
    /// <param name="before">The check that asked for the move.</param>
    /// <param name="after">The frame after it.</param>
    /// <returns>
    /// The mount with the rate factors of those axes that moved by 4′ or more; the others keep theirs, and so does an axis
    /// whose motion fits no factor from a half to twice. Where the factor of the declination axis was known already and its
    /// move came out short on the way back, the play of its gear is larger than was allowed for: that is learned instead.
    /// </returns>
    /// <remarks>
    /// A move that ends from the finish side by more than the play shows nothing of it: that is what it is for. Nor does
    /// right ascension, where the running drive takes up the play by itself.
    /// </remarks>
    public static MountHandling AfterMove(
        MountHandling handling,
        FrameCheck before,
        SeenFrame after
    )
    {
        ArgumentNullException.ThrowIfNull(handling);
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var (ra, dec) = AxisMotion(before.Frame, after);
        var play = Play(handling, before.Moves, dec);
        return handling with
        {
            RightAscension = handling.RightAscension with
            {
                RateFactor = Factor(handling, before.Moves, MountDirection.East, ra),
            },
            Declination = play is { } backlash
                ? handling.Declination with
                {
                    Backlash = backlash,
                }
                : handling.Declination with
                {
                    RateFactor = Factor(handling, before.Moves, MountDirection.North, dec),
                },
        };
    }

    /// <summary>What the axes turned by between two frames, against the stars.</summary>
    /// <param name="before">The earlier frame.</param>
    /// <param name="after">The later one.</param>
    /// <returns>Right ascension, -180° to +180°, east positive, and declination, north positive, both of date.</returns>
    public static (Angle RightAscension, Angle Declination) AxisMotion(
        SeenFrame before,
        SeenFrame after
    )
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var time = OfDateFrame.At(TerrestrialTime.FromUtc(after.At));
        var from = time.ToOfDate(before.Pose.Centre);
        var to = time.ToOfDate(after.Pose.Centre);
        return (
            (to.RightAscension - from.RightAscension).WrappedSigned,
            to.Declination - from.Declination
        );
    }

    /// <summary>The play that a move in declination shows, when its way back was shorter than the play; null when it was not.</summary>
    private static Angle? Play(MountHandling handling, IReadOnlyList<KeyHold> holds, Angle moved)
    {
        var axis = handling.Declination;
        KeyHold[] mine =
        [
            .. holds.Where(hold => hold.Towards is MountDirection.North or MountDirection.South),
        ];
        if (
            axis.RateFactor == 1.0
            || mine is not [{ } leave, { } back]
            || leave.Towards == axis.Finish
        )
        {
            return null;
        }

        var away = KeyHolds.RateOf(handling, leave.Towards, leave.Speed.Sidereal) * leave.Seconds;
        var returned = KeyHolds.RateOf(handling, back.Towards, back.Speed.Sidereal) * back.Seconds;
        var towardsFinish = axis.Finish == MountDirection.North ? moved : -moved;
        var surplus = towardsFinish - (returned - away);

        // Away, the gear leaves its flank first, so the axis lags by the play; a way back that is shorter than the play
        // never takes it up again.
        return surplus > LeastSurplus && surplus > (away + returned) * LeastSurplusPart
            ? towardsFinish + away
            : null;
    }

    private static double Factor(
        MountHandling handling,
        IReadOnlyList<KeyHold> holds,
        MountDirection positive,
        Angle moved
    )
    {
        var axis = handling.AxisTowards(positive);
        if (KeyHolds.Net(handling, holds, positive).Magnitude < LeastMove)
        {
            return axis.RateFactor;
        }

        // The motion is a line in the factor: what the sky adds while the drive stands still, and factor times the rest.
        var standing = With(handling, positive, 0.0);
        var sky = KeyHolds.Net(standing, holds, positive);
        var keys = KeyHolds.Net(With(handling, positive, 1.0), holds, positive) - sky;
        var factor = (moved - sky) / keys;
        return factor is >= LeastFactor and <= MostFactor ? factor : axis.RateFactor;
    }

    private static MountHandling With(
        MountHandling handling,
        MountDirection positive,
        double factor
    ) =>
        positive is MountDirection.East
            ? handling with
            {
                RightAscension = handling.RightAscension with { RateFactor = factor },
            }
            : handling with
            {
                Declination = handling.Declination with { RateFactor = factor },
            };
}
