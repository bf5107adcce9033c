using Framing.Sky;

namespace Framing.Planning;

/// <summary>Turns a move of an axis into keys to hold.</summary>
/// <remarks>
/// <para>
/// Every move ends from the axis's finish side, so that the gear lies against the same flank before and after. Between two
/// such ends the play of the gear cancels: what the axis moved against the stars is the sum of rate times time, whatever the
/// backlash. In right ascension this holds with the drive running, too: while the play is taken up the sky runs on, and the
/// drive gives that back when it takes up the play again.
/// </para>
/// <para>
/// Sidereal rate 15.041069″/s (86164.0905 s a turn; Aoki et al. 1982, A&amp;A 105, 359). A hand keeps a hold of 2 to 20 s
/// well: shorter ones suffer from reaction time, longer ones from patience (common practice).
/// </para>
/// </remarks>
public static class KeyHolds
{
    /// <summary>The shortest hold that a hand keeps well.</summary>
    public const double ShortestSeconds = 2.0;

    /// <summary>The longest hold that is asked for while a faster speed is left.</summary>
    public const double LongestSeconds = 20.0;

    /// <summary>Degrees that the sky turns in a second.</summary>
    private const double SiderealDegrees = 360.0 / 86164.0905;

    /// <summary>How fast an axis moves against the stars while a key is held.</summary>
    /// <param name="handling">The mount.</param>
    /// <param name="towards">The key's direction.</param>
    /// <param name="timesSidereal">The speed's rate as its label promises, a multiple of the sidereal rate.</param>
    /// <returns>Angle on the axis in a second; not more than 0 where the key cannot move the telescope that way.</returns>
    public static Angle RateOf(MountHandling handling, MountDirection towards, double timesSidereal)
    {
        ArgumentNullException.ThrowIfNull(handling);
        var axis = handling.AxisTowards(towards);
        var rate = timesSidereal * axis.RateFactor;
        if (!handling.KeyAddsToTracking)
        {
            // The drive stands still while the key is held: the sky's own motion helps east and hinders west.
            rate += towards switch
            {
                MountDirection.East => 1.0,
                MountDirection.West => -1.0,
                _ => 0.0,
            };
        }

        return Angle.FromDegrees(rate * SiderealDegrees);
    }

    /// <summary>The keys to hold for a move in right ascension.</summary>
    /// <param name="handling">The mount.</param>
    /// <param name="east">How far the axis must turn, east positive: a difference of right ascension.</param>
    /// <returns>None, one or two holds, the last towards the finish side.</returns>
    public static IReadOnlyList<KeyHold> InRightAscension(MountHandling handling, Angle east)
    {
        ArgumentNullException.ThrowIfNull(handling);
        return Along(
            handling,
            east.Radians >= 0.0 ? MountDirection.East : MountDirection.West,
            east.Magnitude
        );
    }

    /// <summary>The keys to hold for a move in declination.</summary>
    /// <param name="handling">The mount.</param>
    /// <param name="north">How far the axis must turn, north positive.</param>
    /// <returns>None, one or two holds, the last towards the finish side.</returns>
    public static IReadOnlyList<KeyHold> InDeclination(MountHandling handling, Angle north)
    {
        ArgumentNullException.ThrowIfNull(handling);
        return Along(
            handling,
            north.Radians >= 0.0 ? MountDirection.North : MountDirection.South,
            north.Magnitude
        );
    }

    /// <summary>The net angle that holds move an axis by against the stars, when they end from the finish side.</summary>
    /// <param name="handling">The mount.</param>
    /// <param name="holds">The holds; those of the other axis do not count.</param>
    /// <param name="positive">The direction counted as positive: east or north.</param>
    /// <returns>The angle on the axis.</returns>
    public static Angle Net(
        MountHandling handling,
        IEnumerable<KeyHold> holds,
        MountDirection positive
    )
    {
        ArgumentNullException.ThrowIfNull(holds);
        var sum = Angle.Zero;
        foreach (var hold in holds)
        {
            var moved = RateOf(handling, hold.Towards, hold.Speed.Sidereal) * hold.Seconds;
            if (hold.Towards == positive)
            {
                sum += moved;
            }
            else if (hold.Towards == Opposite(positive))
            {
                sum -= moved;
            }
        }

        return sum;
    }

    /// <summary>The opposite direction.</summary>
    /// <param name="towards">A direction.</param>
    /// <returns>Its opposite.</returns>
    public static MountDirection Opposite(MountDirection towards) =>
        towards switch
        {
            MountDirection.East => MountDirection.West,
            MountDirection.West => MountDirection.East,
            MountDirection.North => MountDirection.South,
            _ => MountDirection.North,
        };

    private static IReadOnlyList<KeyHold> Along(
        MountHandling handling,
        MountDirection towards,
        Angle distance
    )
    {
        if (distance.Radians <= 0.0)
        {
            return [];
        }

        var axis = handling.AxisTowards(towards);
        var finish = axis.Finish;
        var away = Opposite(finish);
        if (towards == finish && SlowestFor(handling, finish, distance) is { } direct)
        {
            var seconds = distance / RateOf(handling, finish, direct.Sidereal);
            if (seconds >= ShortestSeconds)
            {
                return [Hold(handling, finish, direct, seconds)];
            }
        }

        // Away first, then back: far enough that the play is taken up, and long enough for a hand on both keys.
        var back = SlowestFor(handling, finish, axis.Backlash * 2.0);
        if (back is null)
        {
            return [];
        }

        var backRate = RateOf(handling, finish, back.Sidereal);
        var net = towards == finish ? -distance : distance;
        var overshoot = Angle.Max(axis.Backlash * 2.0, backRate * ShortestSeconds);
        if (overshoot + net is var first && first < backRate * ShortestSeconds)
        {
            overshoot += (backRate * ShortestSeconds) - first;
        }

        var leave = SlowestFor(handling, away, overshoot + net);
        return leave is null
            ? []
            :
            [
                Hold(
                    handling,
                    away,
                    leave,
                    (overshoot + net) / RateOf(handling, away, leave.Sidereal)
                ),
                Hold(handling, finish, back, overshoot / backRate),
            ];
    }

    private static KeyHold Hold(
        MountHandling handling,
        MountDirection towards,
        MountSpeed speed,
        double seconds
    ) => new(towards, handling.KeyTowards(towards), speed, seconds);

    /// <summary>The slowest speed that makes a distance in time; the fastest where none does; null where no key goes that way.</summary>
    private static MountSpeed? SlowestFor(
        MountHandling handling,
        MountDirection towards,
        Angle distance
    )
    {
        MountSpeed? last = null;
        foreach (var speed in handling.Speeds)
        {
            var rate = RateOf(handling, towards, speed.Sidereal);
            if (rate.Radians <= 0.0)
            {
                continue;
            }

            last = speed;
            if (distance / rate <= LongestSeconds)
            {
                break;
            }
        }

        return last;
    }
}
