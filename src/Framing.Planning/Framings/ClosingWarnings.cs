using Framing.Mosaics;

namespace Framing.Planning;

/// <summary>What the user should know of a mosaic that closes less often than the plan wants.</summary>
internal static class ClosingWarnings
{
    /// <summary>Standard errors of the drawn chance that may be missing before it is worth a word.</summary>
    private const double Grace = 3.0;

    /// <summary>The strategy that finds the overlap for a chance.</summary>
    private const string ForPointing = "for-pointing";

    /// <summary>The warning; null when the mosaic closes often enough, or has a gap as planned, which is said elsewhere.</summary>
    public static string? Of(FramedPlan plan)
    {
        var wanted = plan.Request.ChanceNoGap;
        if (
            plan.Odds is not { WeakestPair: { } pair } odds
            || ClosesOftenEnough(plan.Request, odds)
        )
        {
            return null;
        }

        var most =
            plan.Panels.Count == 2
                ? string.Empty
                : FormattableString.Invariant(
                    $" Most often panels {pair.First} and {pair.Second} part: {ChanceText.Times(pair.Chance)}."
                );
        var area = FormattableString.Invariant(
            $" On average {AreaText.Of(odds.ExpectedGapArea)} stay open."
        );
        return $"With the mount's errors the panels close {ChanceText.Times(odds.ChanceNoGap)}, {Wanted(wanted)}.{most}{area} {Remedy(plan)}";
    }

    /// <summary>True when the chance drawn is the one that is wanted, within what drawing leaves open.</summary>
    public static bool ClosesOftenEnough(FramingRequest request, ClosingOdds odds)
    {
        var wanted = request.ChanceNoGap;
        return odds.ChanceNoGap
            >= wanted - (Grace * Math.Sqrt(wanted * (1.0 - wanted) / odds.Trials));
    }

    private static string Wanted(double chance) =>
        FormattableString.Invariant($"{chance * 100.0:0.##} are wanted (chance_no_gap)");

    private static string Remedy(FramedPlan plan) =>
        string.Equals(plan.Request.Overlap.Name, ForPointing, StringComparison.Ordinal)
            ? "Check each panel with a test frame, or ask for a smaller chance."
            : $"Set overlap = \"{ForPointing}\", which shares as much as that takes, or check each panel with a test frame.";
}
