using Framing.Sky;

namespace Framing.Workshop;

/// <summary>The night and how it is spent: [night].</summary>
public sealed record NightSection
{
    /// <summary>The evening's date at the site; null when the plan names none.</summary>
    public required DateOnly? Date { get; init; }

    /// <summary>How many nights are planned, from the date on.</summary>
    public required int Nights { get; init; }

    /// <summary>How dark it has to be.</summary>
    public required Darkness Darkness { get; init; }

    /// <summary>Exposure wanted for each panel, all filters together.</summary>
    public required TimeSpan GoalPerPanel { get; init; }

    /// <summary>Time after sunset for aligning, focus and the first framing.</summary>
    public required TimeSpan Setup { get; init; }

    /// <summary>Time that a change of panel takes.</summary>
    public required TimeSpan Repoint { get; init; }

    /// <summary>Time between two looks at the focus.</summary>
    public required TimeSpan FocusEvery { get; init; }

    /// <summary>Time that a look at the focus takes.</summary>
    public required TimeSpan Focus { get; init; }

    /// <summary>Time for flats.</summary>
    public required TimeSpan Flats { get; init; }

    /// <summary>Share of subs that will be thrown away, 0 to less than 1.</summary>
    public required double ExpectedLoss { get; init; }

    /// <summary>The widest step of dithering to any side.</summary>
    public required Angle Dither { get; init; }

    /// <summary>How far a star may trail in a sub, in (binned) pixels.</summary>
    public required double TrailLimitPx { get; init; }

    /// <summary>The filters; empty when the plan names none.</summary>
    public required IReadOnlyList<FilterSection> Filters { get; init; }
}
