using Framing.Sky;

namespace Framing.Planning;

/// <summary>What a key turned out to do.</summary>
public sealed record KeyFinding
{
    /// <summary>What was pressed.</summary>
    public required KeyPress Press { get; init; }

    /// <summary>Where the telescope went: the direction of its larger motion on the sky.</summary>
    public required MountDirection Went { get; init; }

    /// <summary>By how much the axis of that direction turned, 0 or more.</summary>
    public required Angle Turned { get; init; }

    /// <summary>How far the telescope went aside on the sky meanwhile, 0 or more.</summary>
    public required Angle Aside { get; init; }

    /// <summary>The speed that was set, or is nearest to what was seen.</summary>
    public required MountSpeed Speed { get; init; }

    /// <summary>The rate of the axis by the key alone, a multiple of the sidereal rate, the play allowed for.</summary>
    public required double TimesSidereal { get; init; }

    /// <summary>True rate over the rate that the speed's label promises.</summary>
    public required double RateFactor { get; init; }

    /// <summary>
    /// The play of the gear that this press shows; null when it shows none: the key ran towards the finish side, or the true
    /// rate was not known yet, or the running drive has taken up the play.
    /// </summary>
    public required Angle? Backlash { get; init; }

    /// <summary>True when the key moves the telescope the other way along its axis: the labels stand crosswise.</summary>
    public bool IsCrossed => Went == KeyHolds.Opposite(Press.Towards);

    /// <summary>The mount with what was learned.</summary>
    public required MountHandling Learned { get; init; }
}
