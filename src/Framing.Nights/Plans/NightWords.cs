using System.Globalization;

namespace Framing.Nights;

/// <summary>What a plan of the nights cannot do, in words: what, by how much, and what to do.</summary>
public static class NightWords
{
    /// <summary>Panels that are told one by one; with more of them they are summed up.</summary>
    private const int OneByOne = 3;

    /// <summary>Why nothing at all can be shot.</summary>
    /// <param name="plan">The plan.</param>
    /// <returns>One or more sentences; null when something can be shot, or no filter is planned.</returns>
    public static string? Nothing(PlannedNights plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (!plan.NothingToShoot)
        {
            return null;
        }

        var when =
            plan.Nights.Count == 1 ? "in the night of " + Date(plan.Nights[0]) : "in these nights";
        var why =
            plan.Nights.All(night => night.Dark.Count == 0) ? $"{TooLight(plan)}."
            : plan.Nights.All(night => night.Usable.Count == 0)
                ? $"setting up ({DurationText.Of(plan.Request.Setup)} from sunset) takes all of the dark time. Begin earlier, or lower setup_min."
            : string.Join(
                ' ',
                OutOfReach(plan).DefaultIfEmpty("no stretch of time is as long as one sub.")
            );
        return $"Nothing can be shot {when}: {why}";
    }

    /// <summary>What the user should know of a plan that does something.</summary>
    /// <param name="plan">The plan.</param>
    /// <returns>Sentences; none when all that is wanted fits into dark nights.</returns>
    public static IReadOnlyList<string> Warnings(PlannedNights plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var words = new List<string>();
        if (plan.NothingToShoot)
        {
            return words;
        }

        words.AddRange(Twilight(plan));
        if (plan.Request.Filters.Count > 0)
        {
            words.AddRange(OutOfReach(plan).Select(Capital));
            words.AddRange(Short(plan));
        }

        return words;
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    private static string TooLight(PlannedNights plan) =>
        plan.Nights[0].Sun.Words
        + (
            plan.Request.Darkness == DarknessWanted.Civil
                ? ""
                : ". Choose another date, or, for bright targets, less darkness"
        );

    private static IEnumerable<string> Twilight(PlannedNights plan)
    {
        foreach (
            var night in plan.Nights.Where(night =>
                night.Dark.Count == 0 || night.Darkness != plan.Request.Darkness
            )
        )
        {
            yield return night.Dark.Count == 0
                ? $"Nothing is shot in the night of {Date(night)}: {night.Sun.Words}."
                : $"The night of {Date(night)} does not get astronomically dark: the Sun stays above -18°. The plan takes the time in which it is below -12°.";
        }
    }

    private static IEnumerable<string> OutOfReach(PlannedNights plan)
    {
        var limits = plan.Request.Limits;
        var low = new List<int>();
        var kept = new List<(int Panel, string Filter)>();
        foreach (var panel in plan.Tallies.GroupBy(tally => tally.Panel))
        {
            if (!panel.All(tally => !tally.CanBeShot))
            {
                kept.AddRange(
                    panel
                        .Where(tally => !tally.CanBeShot)
                        .Select(tally => (panel.Key, tally.Filter.Name))
                );
            }
            else if (plan.Nights.All(night => night.Reachable[panel.Key - 1].Count == 0))
            {
                low.Add(panel.Key);
            }
            else
            {
                kept.AddRange(panel.Select(tally => (panel.Key, tally.Filter.Name)));
            }
        }

        var beyond = low.Where(panel =>
                Math.Abs(plan.Request.Panels[panel - 1].Declination.Degrees) + 0.2
                > limits.DeclinationLimit.Degrees
            )
            .ToList();
        if (beyond.Count > 0)
        {
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"{Panels(beyond)} {Verb(beyond, "lies", "lie")} beyond declination {limits.DeclinationLimit.Degrees:0.#}°, which the mount does not pass."
            );
        }

        low.RemoveAll(beyond.Contains);
        if (low.Count > 0)
        {
            var highest = plan.Nights.Max(night =>
                low.Max(panel => night.Highest[panel - 1]?.Degrees ?? -90.0)
            );
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"{Panels(low)} {Verb(low, "is", "are")} never in reach in the usable dark time: {(low.Count == 1 ? "it stands" : "the highest stands")} at {highest:0}° at most, and nothing is shot below {limits.MinAltitude.Degrees:0}° or the skyline{(limits.ZenithLimit.Degrees > 0.0 ? " or near the zenith" : "")}."
            );
        }

        foreach (var filter in kept.GroupBy(item => item.Filter, StringComparer.Ordinal))
        {
            var panels = filter.Select(item => item.Panel).ToList();
            yield return $"{Panels(panels)} cannot be shot through {filter.Key}: the time {(panels.Count == 1 ? "it is" : "they are")} in reach{(plan.Request.Filters.First(f => f.Name == filter.Key).Moon.IsNone ? "" : ", the Moon being far enough away,")} is shorter than one sub.";
        }
    }

    private static IEnumerable<string> Short(PlannedNights plan)
    {
        var missing = plan
            .Tallies.Where(tally => tally.CanBeShot && tally.Short > TimeSpan.Zero)
            .GroupBy(tally => tally.Panel)
            .Select(panel =>
                (
                    Panel: panel.Key,
                    Time: panel.Aggregate(TimeSpan.Zero, (sum, tally) => sum + tally.Short),
                    Text: string.Join(
                        ", ",
                        panel
                            .Where(tally => tally.Short > TimeSpan.Zero)
                            .Select(tally =>
                                string.Create(
                                    CultureInfo.InvariantCulture,
                                    $"{tally.SubsWanted - tally.SubsPlanned} {(tally.SubsWanted - tally.SubsPlanned == 1 ? "sub" : "subs")} of {tally.Filter.Name}"
                                )
                            )
                    )
                )
            )
            .OrderByDescending(panel => panel.Time)
            .ThenBy(panel => panel.Panel)
            .ToList();
        if (missing.Count == 0)
        {
            yield break;
        }

        var next =
            $"Begin the {(plan.Nights.Count == 1 ? "second night" : "night after these")} with panel {missing[0].Panel.ToString(CultureInfo.InvariantCulture)}";
        if (missing.Count <= OneByOne)
        {
            foreach (var (panel, time, text) in missing)
            {
                yield return string.Create(
                    CultureInfo.InvariantCulture,
                    $"Panel {panel} falls short by {DurationText.Of(time)} ({text}).{(panel == missing[0].Panel ? $" {next}." : "")}"
                );
            }

            yield break;
        }

        var all = missing.Aggregate(TimeSpan.Zero, (sum, panel) => sum + panel.Time);
        var done = plan.Tallies.Aggregate(
            TimeSpan.Zero,
            (sum, tally) => sum + (tally.Filter.Sub * tally.SubsPlanned)
        );
        var nights = (int)Math.Ceiling(all / (done / plan.Nights.Count));
        yield return string.Create(
            CultureInfo.InvariantCulture,
            $"{missing.Count} panels fall short, by {DurationText.Of(all)} together; panel {missing[0].Panel} most, by {DurationText.Of(missing[0].Time)} ({missing[0].Text}). {next}; about {nights} more {(nights == 1 ? "night" : "nights")} like {(plan.Nights.Count == 1 ? "this" : "these")} would do."
        );
    }

    private static string Date(PlannedNight night) =>
        night.Sun.Evening.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    private static string Verb(List<int> panels, string one, string many) =>
        panels.Count == 1 ? one : many;

    private static string Panels(List<int> panels)
    {
        var numbers = panels
            .Distinct()
            .Order()
            .Select(panel => panel.ToString(CultureInfo.InvariantCulture))
            .ToList();
        return numbers.Count == 1
            ? "panel " + numbers[0]
            : $"panels {string.Join(", ", numbers.SkipLast(1))} and {numbers[^1]}";
    }
}
