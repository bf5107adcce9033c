using System.Globalization;
using Framing.Sky;

namespace Framing.Planning;

/// <summary>Finds out what a key really does, from a frame before and one after it was held.</summary>
/// <remarks>
/// <para>
/// A press towards the finish side finds the gear loaded already and shows the rate. A press away from it first crosses the
/// play: in declination the axis lags by it, which shows the play once the rate is known; in right ascension the running
/// drive takes it up again by itself within a few seconds, and the frames show the whole rate.
/// </para>
/// <para>Rates are those of the axis, a difference of right ascension, not of the star on the sky.</para>
/// </remarks>
public static class KeyTrial
{
    /// <summary>A shorter way says little: the errors of hand and frames weigh too much.</summary>
    public static Angle LeastMove => Angle.FromArcminutes(2.0);

    /// <summary>Outside of these factors it was another speed, or a clutch that slipped.</summary>
    private const double LeastFactor = 0.5;

    private const double MostFactor = 2.0;

    /// <summary>More than this part of the way aside means that it was no single key.</summary>
    private const double MostAside = 0.5;

    /// <summary>Seconds of reaction, of a hand on a key (common practice).</summary>
    private const double Reaction = 0.2;

    /// <summary>Finds out.</summary>
    /// <param name="handling">The mount as it is known.</param>
    /// <param name="press">What was pressed.</param>
    /// <param name="before">The frame before.</param>
    /// <param name="after">The frame after.</param>
    /// <returns>What the key does, or why that cannot be told.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The press did not last.</exception>
    public static KeyResult Judge(
        MountHandling handling,
        KeyPress press,
        SeenFrame before,
        SeenFrame after
    )
    {
        ArgumentNullException.ThrowIfNull(handling);
        ArgumentNullException.ThrowIfNull(press);
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(press.Seconds, nameof(press));
        var (ra, dec) = KeyLearning.AxisMotion(before, after);
        var time = OfDateFrame.At(TerrestrialTime.FromUtc(after.At));
        var middle = time.ToOfDate(before.Pose.Centre.MidpointTo(after.Pose.Centre));
        var east = ra * Math.Cos(middle.Declination.Radians);
        var alongRa = east.Magnitude >= dec.Magnitude;
        var went =
            alongRa ? (ra.Radians >= 0.0 ? MountDirection.East : MountDirection.West)
            : dec.Radians >= 0.0 ? MountDirection.North
            : MountDirection.South;
        var (way, aside) = alongRa
            ? (east.Magnitude, dec.Magnitude)
            : (dec.Magnitude, east.Magnitude);
        if (way < LeastMove)
        {
            return Refuse(
                $"the telescope moved by only {way.Arcminutes:0.0}′ between the frames: hold the key longer, or at a faster speed"
            );
        }

        if (aside > way * MostAside)
        {
            return Refuse(
                $"the telescope moved {way.Arcminutes:0.0}′ {Name(went)}, but {aside.Arcminutes:0.0}′ aside as well: hold one key alone, and type nothing between the frames"
            );
        }

        if (SameAxis(went, press.Towards) is false)
        {
            return Refuse(
                $"the telescope went {Name(went)}, not along the axis of {Name(press.Towards)}: another key was held, or keys and axes are wired differently; name the key that was held"
            );
        }

        var turned = alongRa ? ra.Magnitude : dec.Magnitude;
        return Rated(handling, press, went, turned, aside);
    }

    private static KeyResult Rated(
        MountHandling handling,
        KeyPress press,
        MountDirection went,
        Angle turned,
        Angle aside
    )
    {
        var axis = handling.AxisTowards(went);
        var inDeclination = went is MountDirection.North or MountDirection.South;
        var lags = inDeclination && went != axis.Finish;
        var known = axis.RateFactor != 1.0;
        var unit = KeyHolds.RateOf(With(handling, went, 1.0), went, 1.0);
        var standing = KeyHolds.RateOf(With(handling, went, 0.0), went, 1.0);

        // What the key alone turned, in units of the sidereal rate; the drive that stands still meanwhile adds its part.
        double Times(Angle angle) => ((angle / press.Seconds) - standing) / (unit - standing);
        var plain = Times(turned);
        var withPlay = Times(turned + axis.Backlash);
        var speed =
            press.Speed
            ?? handling.Speeds.MinBy(candidate =>
                Math.Abs(Math.Log(Math.Max(lags ? withPlay : plain, 1e-6) / candidate.Sidereal))
            )!;
        Angle? backlash = null;
        double times;
        if (lags && known)
        {
            times = speed.Sidereal * axis.RateFactor;
            var missing =
                (KeyHolds.RateOf(handling, went, speed.Sidereal) * press.Seconds) - turned;
            backlash = Angle.Max(Angle.Zero, missing);
        }
        else
        {
            times = lags ? withPlay : plain;
        }

        var factor = times / speed.Sidereal;
        if (factor is not (>= LeastFactor and <= MostFactor))
        {
            return Refuse(
                $"the axis turned at {times:0.0} times the sky's motion, which is no rate of speed {speed.Label} ({speed.Sidereal:0.##} times): name the speed that was set, or look whether a clutch slips"
            );
        }

        var learnedAxis = axis with { RateFactor = factor, Backlash = backlash ?? axis.Backlash };
        var learned = inDeclination
            ? handling with
            {
                Declination = learnedAxis,
            }
            : handling with
            {
                RightAscension = learnedAxis,
            };
        if (went == KeyHolds.Opposite(press.Towards))
        {
            learned = learned with { Keys = Crossed(learned.Keys, inDeclination) };
        }

        return new(
            new()
            {
                Press = press,
                Went = went,
                Turned = turned,
                Aside = aside,
                Speed = speed,
                TimesSidereal = times,
                RateFactor = factor,
                Backlash = backlash,
                Learned = learned,
            },
            null
        );
    }

    /// <summary>How well a rate is known from a hold: the hand's reaction at both ends, as a part of the rate.</summary>
    /// <param name="press">What was pressed.</param>
    /// <returns>A fraction, 0 or more.</returns>
    public static double Uncertainty(KeyPress press)
    {
        ArgumentNullException.ThrowIfNull(press);
        return Reaction / press.Seconds;
    }

    private static MountKeys Crossed(MountKeys keys, bool inDeclination) =>
        inDeclination
            ? keys with
            {
                North = keys.South,
                South = keys.North,
            }
            : keys with
            {
                East = keys.West,
                West = keys.East,
            };

    private static bool SameAxis(MountDirection one, MountDirection other) =>
        one is MountDirection.East or MountDirection.West
            ? other is MountDirection.East or MountDirection.West
            : other is MountDirection.North or MountDirection.South;

    private static MountHandling With(MountHandling handling, MountDirection axis, double factor) =>
        axis is MountDirection.East or MountDirection.West
            ? handling with
            {
                RightAscension = handling.RightAscension with { RateFactor = factor },
            }
            : handling with
            {
                Declination = handling.Declination with { RateFactor = factor },
            };

    private static string Name(MountDirection direction) =>
        direction switch
        {
            MountDirection.East => "east",
            MountDirection.West => "west",
            MountDirection.North => "north",
            _ => "south",
        };

    private static KeyResult Refuse(FormattableString why) =>
        new(null, why.ToString(CultureInfo.InvariantCulture));
}
