using Framing.Nights;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>The mount and its hand control: [mount].</summary>
public sealed record MountSection
{
    /// <summary>How it is built.</summary>
    public required MountType Type { get; init; }

    /// <summary>Time lost at the meridian.</summary>
    public required TimeSpan MeridianPause { get; init; }

    /// <summary>Beyond this declination (north or south) the camera meets arm or base; 90° when nothing is in the way.</summary>
    public required Angle DeclinationLimit { get; init; }

    /// <summary>Which coordinates the hand control expects.</summary>
    public required GotoFrame GotoFrame { get; init; }

    /// <summary>How the hand control wants them typed.</summary>
    public required EntryFormat EntryFormat { get; init; }

    /// <summary>In which order the hand control takes a date.</summary>
    public required DateOrder DateOrder { get; init; }

    /// <summary>Standard deviation of the first pointing on each axis.</summary>
    public required Angle GotoSigma { get; init; }

    /// <summary>Standard deviation on each axis after a checked test frame.</summary>
    public required Angle CentredSigma { get; init; }

    /// <summary>True when a test frame is checked at each panel.</summary>
    public required bool CheckEachPanel { get; init; }

    /// <summary>Distance of the mount's axis from the pole.</summary>
    public required Angle PolarError { get; init; }

    /// <summary>Backlash in right ascension, as an angle on the axis.</summary>
    public required Angle BacklashRightAscension { get; init; }

    /// <summary>Backlash in declination.</summary>
    public required Angle BacklashDeclination { get; init; }

    /// <summary>Learned: true rate in right ascension over what the labels of the speeds promise; 1 when not known.</summary>
    public required double RateFactorRightAscension { get; init; }

    /// <summary>Learned: the same in declination.</summary>
    public required double RateFactorDeclination { get; init; }

    /// <summary>Distance from the zenith within which nothing is shot; 0 when there is no such limit.</summary>
    public required Angle ZenithLimit { get; init; }

    /// <summary>The side from which every move in right ascension ends: east or west.</summary>
    public required MountDirection FinishRightAscension { get; init; }

    /// <summary>The side from which every move in declination ends: north or south.</summary>
    public required MountDirection FinishDeclination { get; init; }

    /// <summary>True when a pressed key adds to the drive's motion; false when it replaces it.</summary>
    public required bool KeyAddsToTracking { get; init; }

    /// <summary>Learned: the reading of the camera's dial when up is north; null when not known.</summary>
    public required Angle? DialZero { get; init; }

    /// <summary>The speeds of the hand control, slowest first, one or more.</summary>
    public required IReadOnlyList<MountSpeed> Speeds { get; init; }

    /// <summary>What is printed on the keys.</summary>
    public required MountKeys Keys { get; init; }

    /// <summary>How the mount is moved by hand.</summary>
    public MountHandling Handling =>
        new()
        {
            RightAscension = new(
                FinishRightAscension,
                BacklashRightAscension,
                RateFactorRightAscension
            ),
            Declination = new(FinishDeclination, BacklashDeclination, RateFactorDeclination),
            Speeds = Speeds,
            Keys = Keys,
            KeyAddsToTracking = KeyAddsToTracking,
        };
}
