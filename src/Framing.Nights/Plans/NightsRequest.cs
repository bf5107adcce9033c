using Framing.Sky;

namespace Framing.Nights;

/// <summary>Everything that a plan of the nights depends on.</summary>
public sealed record NightsRequest
{
    /// <summary>Where.</summary>
    public required ObservingSite Site { get; init; }

    /// <summary>The clock at the site.</summary>
    public SiteClock Clock { get; init; } = SiteClock.Utc;

    /// <summary>The date of the first evening, years 1902 to 2198.</summary>
    public required DateOnly Evening { get; init; }

    /// <summary>How many nights, from the first on, 1 or more.</summary>
    public int Nights { get; init; } = 1;

    /// <summary>How dark it has to be.</summary>
    public DarknessWanted Darkness { get; init; }

    /// <summary>What the telescope cannot reach.</summary>
    public required ReachLimits Limits { get; init; }

    /// <summary>From sunset to the first sub at the earliest: setting up, aligning, focus, the first framing.</summary>
    public TimeSpan Setup { get; init; }

    /// <summary>What a change of panel takes, focus and a dither in it.</summary>
    public TimeSpan Repoint { get; init; }

    /// <summary>The longest time between two looks at the focus; 0 for no such looks.</summary>
    public TimeSpan FocusEvery { get; init; }

    /// <summary>What a look at the focus takes.</summary>
    public TimeSpan Focus { get; init; }

    /// <summary>What flats take: after the last sub of the night, or before the camera is turned.</summary>
    public TimeSpan Flats { get; init; }

    /// <summary>True when the camera is turned at each change of panel: flats are then taken before each.</summary>
    public bool TurnsCamera { get; init; }

    /// <summary>Good exposure wanted for each panel, all filters together, more than 0.</summary>
    public TimeSpan GoalPerPanel { get; init; }

    /// <summary>Share of the subs that will be thrown away, 0 to less than 1.</summary>
    public double ExpectedLoss { get; init; }

    /// <summary>The filters; with none, dark times and windows are all there is to say.</summary>
    public required IReadOnlyList<NightFilter> Filters { get; init; }

    /// <summary>The middles of the panels in their order, ICRS.</summary>
    public required IReadOnlyList<SkyDirection> Panels { get; init; }

    /// <summary>What stands between two blocks of different panels.</summary>
    internal TimeSpan PanelChange => Repoint + (TurnsCamera ? Flats : TimeSpan.Zero);

    /// <summary>Good subs wanted of each panel through a filter.</summary>
    /// <param name="filter">One of <see cref="Filters"/>.</param>
    /// <returns>How many, rounded up.</returns>
    public int GoodSubs(NightFilter filter)
    {
        ArgumentNullException.ThrowIfNull(filter);
        var shares = Filters.Sum(other => other.Share);
        return (int)Math.Ceiling((GoalPerPanel * (filter.Share / shares) / filter.Sub) - 1e-9);
    }

    /// <summary>Subs to shoot of each panel through a filter, so that as many as wanted are expected to be good.</summary>
    /// <param name="filter">One of <see cref="Filters"/>.</param>
    /// <returns>How many, rounded up.</returns>
    public int SubsToShoot(NightFilter filter) =>
        (int)Math.Ceiling((GoodSubs(filter) / (1.0 - ExpectedLoss)) - 1e-9);

    /// <summary>How many of some subs are expected to be good, rounded down.</summary>
    /// <param name="subs">Subs shot.</param>
    /// <returns>How many.</returns>
    public int ExpectedGood(int subs) => (int)Math.Floor((subs * (1.0 - ExpectedLoss)) + 1e-9);
}
