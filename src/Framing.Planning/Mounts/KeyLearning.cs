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

    /// <summary>Learns from a move that was asked for and the frame that was taken after it.</summary>
    /// <param name="handling">The mount as it was known when the move was asked for.</param>
    /// <param name="before">The check that asked for the move.</param>
    /// <param name="after">The frame after it.</param>
    /// <returns>
    /// The mount with the rate factors of those axes that moved by 4′ or more; the others keep theirs, and so does an axis
    /// whose motion fits no factor from a half to twice.
    /// </returns>
    public static MountHandling AfterMove(
        MountHandling handling,
        FrameCheck before,
        SeenFrame after
    )
    {
        ArgumentNullException.ThrowIfNull(handling);
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var time = OfDateFrame.At(TerrestrialTime.FromUtc(after.At));
        var from = time.ToOfDate(before.Frame.Pose.Centre);
        var to = time.ToOfDate(after.Pose.Centre);
        var ra = (to.RightAscension - from.RightAscension).WrappedSigned;
        var dec = to.Declination - from.Declination;
        return handling with
        {
            RightAscension = handling.RightAscension with
            {
                RateFactor = Factor(handling, before.Moves, MountDirection.East, ra),
            },
            Declination = handling.Declination with
            {
                RateFactor = Factor(handling, before.Moves, MountDirection.North, dec),
            },
        };
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
