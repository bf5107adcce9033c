using System.Globalization;
using System.Text;
using Framing.Nights;

namespace Framing.Export;

/// <summary>Says planned nights in plain words: when it is dark, what is shot when.</summary>
internal static class NightsText
{
    /// <summary>When, for the middle of the sentence; empty without nights.</summary>
    public static string When(PlannedNights? plan) =>
        plan is null ? string.Empty
        : plan.Nights.Count == 1 ? $" on {ShortDate(plan.Nights[0])}"
        : Invariant($" on {plan.Nights.Count} nights from {ShortDate(plan.Nights[0])} on");

    /// <summary>Good exposure of each panel, for the end of the sentence; empty without any.</summary>
    public static string Good(PlannedNights? plan)
    {
        if (plan is null || plan.Subs == 0)
        {
            return string.Empty;
        }

        var good = Enumerable
            .Range(1, plan.Request.Panels.Count)
            .Select(plan.GoodExposure)
            .ToList();
        var (least, most) = (DurationText.Of(good.Min()), DurationText.Of(good.Max()));
        var each = good.Count > 1 ? " each" : string.Empty;
        return string.Equals(least, most, StringComparison.Ordinal)
            ? $", {most} of good subs{each}"
            : $", {least} to {most} of good subs{each}";
    }

    public static void Write(StringBuilder text, PlannedNights plan)
    {
        foreach (var night in plan.Nights)
        {
            text.Append('\n');
            Night(text, night, plan.Request.Clock);
        }

        if (plan.Blocks.Any())
        {
            Quality(text, plan);
        }
    }

    private static void Night(StringBuilder text, PlannedNight night, SiteClock clock)
    {
        var sun = night.Sun;
        var changes = clock.Changes(sun.Start, sun.End);
        var offset =
            changes.Count > 0
                ? "with their offset from UTC"
                : $"UTC{clock.At(night.Middle).OffsetText}";
        Lines.Wrap(
            text,
            "Night   ",
            LongDate(night)
                + (
                    clock.ShowsUtc
                        ? "; all times are UTC."
                        : $"; times at the site ({clock.ZoneName}, {offset}), UTC beside them."
                )
        );
        foreach (var change in changes)
        {
            Lines.Wrap(
                text,
                "        ",
                $"At {change.Utc.ToString("HH:mm", CultureInfo.InvariantCulture)} UTC {change.Words}."
            );
        }

        Lines.Wrap(text, "Dark    ", Dark(night, clock, changes.Count > 0));
        Lines.Wrap(
            text,
            "Moon    ",
            Invariant(
                $"{night.Moon.IlluminatedFraction * 100.0:0} % lit, {night.Moon.Separation.Degrees:0}° from the middle of the panels{Up(night, clock, changes.Count > 0)}."
            )
        );
        if (night.Blocks.Count > 0)
        {
            Blocks(text, night, clock, changes.Count > 0);
        }
    }

    private static string Dark(PlannedNight night, SiteClock clock, bool offsets)
    {
        if (night.Dark.Count == 0)
        {
            return night.Sun.Words + ".";
        }

        var stretches = string.Join(
            ", and ",
            night.Dark.Select(stretch => Stretch(stretch.Start, stretch.End, clock, offsets))
        );
        return night.Darkness switch
        {
            DarknessWanted.Nautical =>
                $"{stretches}: the Sun more than 12° down ({night.Sun.Words}).",
            DarknessWanted.Civil => $"{stretches}: the Sun more than 6° down.",
            _ => stretches + ".",
        };
    }

    private static string Up(PlannedNight night, SiteClock clock, bool offsets)
    {
        if (night.Dark.Count == 0)
        {
            return string.Empty;
        }

        var (from, to) = (night.Dark[0].Start, night.Dark[^1].End);
        var up = night.Moon.Up.Where(stretch => stretch.Start < to && stretch.End > from).ToList();
        if (up.Count == 0)
        {
            return "; below the horizon while it is dark";
        }

        if (up.Count == 1 && up[0].Start <= from && up[0].End >= to)
        {
            return "; up all the dark time";
        }

        return "; up "
            + string.Join(
                " and ",
                up.Select(stretch =>
                    stretch.Start <= from ? $"until {Time(stretch.End, clock, offsets)}"
                    : stretch.End >= to ? $"from {Time(stretch.Start, clock, offsets)} on"
                    : $"from {Time(stretch.Start, clock, offsets)} to {Time(stretch.End, clock, offsets)}"
                )
            );
    }

    private static void Blocks(
        StringBuilder text,
        PlannedNight night,
        SiteClock clock,
        bool offsets
    )
    {
        var rows = night
            .Blocks.Select(block =>
                (string[])
                    [
                        clock.ShowsUtc
                            ? ""
                            : $"{Local(block.From, clock, offsets)}–{Local(block.To, clock, offsets)}",
                        $"{Utc(block.From)}–{Utc(block.To)}",
                        Invariant($"{block.Panel}"),
                        block.Filter.Name,
                        Invariant($"{block.SubsToShoot} × {block.Filter.Sub.TotalSeconds:0.##} s"),
                        Invariant($"{block.SubsExpectedGood}"),
                        Invariant($"{block.Lowest.Degrees:0}–{block.Highest.Degrees:0}°"),
                    ]
            )
            .Prepend([
                clock.ShowsUtc ? "" : "At the site",
                "UTC",
                "Panel",
                "Filter",
                "Subs",
                "Good",
                "Altitude",
            ])
            .ToList();
        int[] columns = clock.ShowsUtc ? [1, 2, 3, 4, 5, 6] : [0, 1, 2, 3, 4, 5, 6];
        var widths = Enumerable.Range(0, 7).Select(i => rows.Max(row => row[i].Length)).ToArray();
        text.Append("Shoot\n");
        foreach (var row in rows)
        {
            var line = string.Join(
                "  ",
                columns.Select(i =>
                    i is 2 or 4 or 5 or 6 ? row[i].PadLeft(widths[i]) : row[i].PadRight(widths[i])
                )
            );
            text.Append("  ").Append(line.TrimEnd()).Append('\n');
        }

        if (night.Flats is { } flats)
        {
            Lines.Wrap(
                text,
                "  ",
                $"{Stretch(flats.Start, flats.End, clock, offsets)}: flats, before focus and rings are touched."
            );
        }
    }

    private static void Quality(StringBuilder text, PlannedNights plan) =>
        Lines.Wrap(
            text,
            "Plan    ",
            plan.IsBest ? "no plan is better: this is certain."
                : plan.Tallies.All(tally => tally.SubsPlanned == tally.SubsWanted)
                    ? "everything wanted has its time."
                : plan.Gap <= 0.0
                    ? Invariant(
                        $"every panel gets at least {plan.LeastFraction * 100.0:0} % of its subs, {plan.Subs} subs in all; no plan gives more of either."
                    )
                : Invariant(
                    $"every panel gets at least {plan.LeastFraction * 100.0:0} % of its subs (no plan gives more than {plan.LeastFractionBound * 100.0:0} %), {plan.Subs} subs in all (no plan with that has more than {plan.SubsBound})."
                )
        );

    private static string Stretch(DateTime from, DateTime to, SiteClock clock, bool offsets) =>
        clock.ShowsUtc
            ? $"{Utc(from)}–{Utc(to)} UTC"
            : $"{Local(from, clock, offsets)}–{Local(to, clock, offsets)} ({Utc(from)}–{Utc(to)} UTC)";

    private static string Time(DateTime utc, SiteClock clock, bool offsets) =>
        clock.ShowsUtc ? $"{Utc(utc)} UTC" : $"{Local(utc, clock, offsets)} ({Utc(utc)} UTC)";

    private static string Local(DateTime utc, SiteClock clock, bool offset)
    {
        var at = clock.At(SiteClock.Minute(utc));
        return at.Local.ToString("HH:mm", CultureInfo.InvariantCulture)
            + (offset ? at.OffsetText : "");
    }

    private static string Utc(DateTime utc) =>
        SiteClock.Minute(utc).ToString("HH:mm", CultureInfo.InvariantCulture);

    private static string ShortDate(PlannedNight night) =>
        night.Sun.Evening.ToString("ddd d MMM yyyy", CultureInfo.InvariantCulture);

    private static string LongDate(PlannedNight night) =>
        night.Sun.Evening.ToString("ddd d MMMM yyyy", CultureInfo.InvariantCulture);

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
