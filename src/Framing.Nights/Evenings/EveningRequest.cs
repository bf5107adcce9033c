using Framing.Sky;

namespace Framing.Nights;

/// <summary>What the sums of an evening depend on.</summary>
public sealed record EveningRequest
{
    /// <summary>Lens and camera.</summary>
    public required Rig Rig { get; init; }

    /// <summary>Where the guide star stands; null without a guider.</summary>
    public GuideStar? GuideStar { get; init; }

    /// <summary>The sky that one guide pixel spans; null without a guider.</summary>
    public Angle? GuideScale { get; init; }

    /// <summary>The middles of the panels, ICRS; one or more.</summary>
    public required IReadOnlyList<SkyDirection> Panels { get; init; }

    /// <summary>The site; null where the plan names none.</summary>
    public ObservingSite? Site { get; init; }

    /// <summary>Nothing is shot below this apparent altitude.</summary>
    public Angle LeastAltitude { get; init; }

    /// <summary>The evening's date.</summary>
    public required DateOnly Evening { get; init; }

    /// <summary>The altitude below which the Sun should stay: -18°, -12° or -6°.</summary>
    public required Angle SunBelow { get; init; }

    /// <summary>The human's time before the first sub.</summary>
    public TimeSpan Setup { get; init; }

    /// <summary>The human's time for a change of panel.</summary>
    public TimeSpan Repoint { get; init; }

    /// <summary>The time for flats.</summary>
    public TimeSpan Flats { get; init; }

    /// <summary>Exposure wanted for each panel, all filters together.</summary>
    public required TimeSpan GoalPerPanel { get; init; }

    /// <summary>Share of the subs that will be thrown away, 0 to less than 1.</summary>
    public double ExpectedLoss { get; init; }

    /// <summary>The subs of each filter; none where the plan names none.</summary>
    public IReadOnlyList<SubWish> Subs { get; init; } = [];

    /// <summary>How far the mount's axis misses the pole.</summary>
    public Angle PolarError { get; init; }

    /// <summary>How far a star may trail in a sub, in (binned) pixels, more than 0.</summary>
    public double TrailLimitPx { get; init; } = 1.0;

    /// <summary>Full width at half maximum of a star's disc.</summary>
    public Angle Seeing { get; init; }

    /// <summary>True for a mount that flips at the meridian.</summary>
    public bool Flips { get; init; }

    /// <summary>The battery; null where the plan names none.</summary>
    public Battery? Battery { get; init; }

    /// <summary>What hangs on the battery.</summary>
    public IReadOnlyList<PowerLoad> Loads { get; init; } = [];

    /// <summary>How cold the battery is, °C.</summary>
    public double BatteryCelsius { get; init; }
}
