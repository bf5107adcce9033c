namespace Framing.Nights;

/// <summary>A plan of one or several nights.</summary>
public sealed record PlannedNights
{
    /// <summary>What was asked.</summary>
    public required NightsRequest Request { get; init; }

    /// <summary>The nights.</summary>
    public required IReadOnlyList<PlannedNight> Nights { get; init; }

    /// <summary>What each panel gets through each filter.</summary>
    public required IReadOnlyList<PanelTally> Tallies { get; init; }

    /// <summary>The smallest share of its wanted subs that any panel gets through any filter; those left aside that cannot be shot at all.</summary>
    public required double LeastFraction { get; init; }

    /// <summary>No plan has a higher one.</summary>
    public required double LeastFractionBound { get; init; }

    /// <summary>All subs.</summary>
    public required int Subs { get; init; }

    /// <summary>No plan with the same least fraction has more.</summary>
    public required int SubsBound { get; init; }

    /// <summary>True when it is certain that no plan is better.</summary>
    public required bool IsBest { get; init; }

    /// <summary>All blocks, night by night, in shooting order.</summary>
    public IEnumerable<NightBlock> Blocks => Nights.SelectMany(night => night.Blocks);

    /// <summary>Good exposure that a panel is expected to have in the end, all filters together.</summary>
    /// <param name="panel">The panel's number, from 1.</param>
    /// <returns>The exposure.</returns>
    public TimeSpan GoodExposure(int panel) =>
        Tallies
            .Where(tally => tally.Panel == panel)
            .Aggregate(
                TimeSpan.Zero,
                (sum, tally) => sum + (tally.Filter.Sub * Request.ExpectedGood(tally.SubsPlanned))
            );

    /// <summary>True when filters are planned and nothing can be shot in any night.</summary>
    public bool NothingToShoot => Request.Filters.Count > 0 && Nights.All(n => n.Blocks.Count == 0);

    /// <summary>By how much the plan falls short of the bounds at most, 0 to 1: the larger of the gaps in least fraction and in subs.</summary>
    public double Gap =>
        Math.Max(
            LeastFractionBound > 0.0 ? 1.0 - (LeastFraction / LeastFractionBound) : 0.0,
            SubsBound > 0 ? 1.0 - (Subs / (double)SubsBound) : 0.0
        );
}
