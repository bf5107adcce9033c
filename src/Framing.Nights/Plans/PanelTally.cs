namespace Framing.Nights;

/// <summary>What one panel gets through one filter in all nights.</summary>
/// <param name="Panel">The panel's number, from 1.</param>
/// <param name="Filter">The filter.</param>
/// <param name="SubsWanted">Subs to shoot for the goal, those expected to be lost included.</param>
/// <param name="SubsPlanned">Subs that the plan shoots.</param>
/// <param name="CanBeShot">False when it cannot be shot in any of the nights.</param>
public sealed record PanelTally(
    int Panel,
    NightFilter Filter,
    int SubsWanted,
    int SubsPlanned,
    bool CanBeShot
)
{
    /// <summary>The exposure that is missing.</summary>
    public TimeSpan Short => Filter.Sub * Math.Max(0, SubsWanted - SubsPlanned);
}
