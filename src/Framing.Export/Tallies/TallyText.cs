using System.Globalization;
using System.Text;
using Framing.Planning;

namespace Framing.Export;

/// <summary>Says what each panel has, what is missing, and what to shoot next.</summary>
public static class TallyText
{
    private const string Indent = "  ";

    /// <summary>More left-out frames than this are counted, not listed one by one.</summary>
    private const int MostListed = 40;

    /// <summary>Less than this of the panels is rounding.</summary>
    private const double LeastGapArcmin2 = 0.5;

    /// <summary>Says one tally.</summary>
    /// <param name="tally">The tally.</param>
    /// <returns>Lines, each ending in a line feed.</returns>
    public static string Write(PlanTally tally)
    {
        ArgumentNullException.ThrowIfNull(tally);
        var text = new StringBuilder();
        foreach (var panel in tally.Panels)
        {
            Panel(text, panel);
        }

        text.Append('\n');
        if (tally.Cover.Missing.SquareArcminutes >= LeastGapArcmin2)
        {
            Lines.Wrap(
                text,
                string.Empty,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"No frame yet shows {tally.Cover.Missing.SquareDegrees:0.00} square degrees of the panels, {(1.0 - tally.Cover.CoveredFraction) * 100.0:0.#} % of them, in {tally.Cover.Uncovered.Count} {(tally.Cover.Uncovered.Count == 1 ? "piece" : "pieces")}."
                )
            );
        }
        else
        {
            text.Append("The panels are covered without a hole.\n");
        }

        Next(text, tally);
        LeftOut(text, tally);
        if (tally.Calibration.Count > 0)
        {
            text.Append('\n');
            Lines.Wrap(
                text,
                string.Empty,
                "Beside them: "
                    + string.Join(
                        ", ",
                        tally
                            .Calibration.GroupBy(frame => frame.Kind)
                            .OrderBy(group => group.Key)
                            .Select(group =>
                                Count(
                                    group.Count(),
                                    Kind(group.Key),
                                    group.Key == ShotKind.Bias ? "bias" : Kind(group.Key) + "s"
                                )
                            )
                    )
                    + "."
            );
        }

        if (tally.Doubles > 0)
        {
            Lines.Wrap(
                text,
                string.Empty,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{Count(tally.Doubles, "file is a copy", "files are copies")} of frames that are counted already."
                )
            );
        }

        foreach (var warning in tally.Warnings)
        {
            text.Append('\n');
            Lines.Wrap(text, "! ", warning);
        }

        return text.ToString();
    }

    /// <summary>What a frame was taken for, in a word.</summary>
    internal static string Kind(ShotKind kind) =>
        kind switch
        {
            ShotKind.Flat => "flat",
            ShotKind.Dark => "dark",
            ShotKind.Bias => "bias",
            _ => "light",
        };

    private static void Panel(StringBuilder text, PanelTally panel)
    {
        text.Append(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Panel {panel.Panel.Number}: {panel.GoalFraction * 100.0:0} % of the goal, {panel.CoveredFraction * 100.0:0.#} % covered\n"
            )
        );
        foreach (var entry in panel.ByFilter)
        {
            text.Append(Indent)
                .Append(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{(entry.Filter.Length == 0 ? "no filter" : entry.Filter)}, {entry.SubSeconds:0.###} s: {Count(entry.Frames, "frame", "frames")}, {Time(entry.ExposureSeconds)}{(entry.Rejected > 0 ? string.Create(CultureInfo.InvariantCulture, $"; {entry.Rejected} left out") : string.Empty)}\n"
                    )
                );
        }

        if (panel.ByFilter.Count == 0)
        {
            text.Append(Indent).Append("nothing yet\n");
        }
    }

    private static void Next(StringBuilder text, PlanTally tally)
    {
        text.Append('\n');
        if (tally.Next.Count == 0)
        {
            text.Append("Every goal is reached.\n");
            return;
        }

        text.Append("Shoot next:\n");
        foreach (var next in tally.Next)
        {
            text.Append(Indent)
                .Append(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"panel {next.Panel}{(next.Filter.Length > 0 ? ", " + next.Filter : string.Empty)}: {Time(next.MissingSeconds)} more{(next.Subs > 0 ? string.Create(CultureInfo.InvariantCulture, $", {Count(next.Subs, "sub", "subs")} of {next.SubSeconds:0.###} s with those that will be lost") : string.Empty)}\n"
                    )
                );
        }
    }

    private static void LeftOut(StringBuilder text, PlanTally tally)
    {
        if (tally.LeftOut.Count == 0)
        {
            return;
        }

        text.Append('\n')
            .Append(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Left out, {Count(tally.LeftOut.Count, "frame", "frames")}:\n"
                )
            );
        foreach (var frame in tally.LeftOut.Take(MostListed))
        {
            Lines.Wrap(text, Indent, $"{frame.File}: {frame.Reason}");
        }

        if (tally.LeftOut.Count > MostListed)
        {
            text.Append(Indent)
                .Append(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"and {tally.LeftOut.Count - MostListed} more (all of them with --json)\n"
                    )
                );
        }
    }

    private static string Time(double seconds) =>
        seconds < 90.0 ? string.Create(CultureInfo.InvariantCulture, $"{seconds:0} s")
        : seconds < 5400.0 ? string.Create(CultureInfo.InvariantCulture, $"{seconds / 60.0:0} min")
        : string.Create(CultureInfo.InvariantCulture, $"{seconds / 3600.0:0.0} h");

    private static string Count(int count, string one, string many) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many)}");
}
