using System.Globalization;
using Framing.Nights;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>Writes what fits tonight as a plain table.</summary>
internal static class TonightText
{
    private const int FirstRows = 40;

    public static void Write(TextWriter output, TonightAnswer answer, bool all)
    {
        var clock = answer.Site.Clock;
        var night = answer.Dark.Night;
        var field = answer.Rig.Field;
        output.WriteLine(
            Invariant(
                $"What fits {answer.Rig.FocalLengthMillimetres:0.#} mm ({field.Width.Degrees:0.00}° × {field.Height.Degrees:0.00}°) in the night of {night.Evening:yyyy-MM-dd}"
            )
        );
        output.WriteLine($"  night    {night.Words}");
        foreach (var dark in answer.Dark.Stretches)
        {
            output.WriteLine($"  {Word(answer.Dark), -8} from {clock.Text(dark.Start)}");
            output.WriteLine($"           to   {clock.Text(dark.End)}");
        }

        foreach (var change in clock.Changes(night.Start, night.End))
        {
            output.WriteLine($"  clocks   {clock.Text(change.Utc)}: {change.Words}");
        }

        output.WriteLine($"  Moon     {answer.Phase.Words}; {MoonUp(answer)}");
        output.WriteLine();
        if (answer.Things.Count == 0)
        {
            output.WriteLine(
                answer.Dark.Stretches.Count == 0
                    ? "Nothing: it does not become dark enough for a photograph."
                    : "Nothing of the catalogue fits this rig and stands clear in the dark for half an hour."
            );
            return;
        }

        Table(output, answer, all ? answer.Things : Known(answer.Things));
    }

    /// <summary>What people call by a name; where there is nothing of the kind, whatever there is.</summary>
    private static List<TonightThing> Known(IReadOnlyList<TonightThing> things)
    {
        var named = things.Where(thing => thing.Thing.Name is not null).Take(FirstRows).ToList();
        return named.Count > 0 ? named : [.. things.Take(FirstRows)];
    }

    private static void Table(
        TextWriter output,
        TonightAnswer answer,
        IReadOnlyList<TonightThing> shown
    )
    {
        var clock = answer.Site.Clock;
        output.WriteLine("Dark h   Highest       Frames  Fills         Size    Moon  Object");
        foreach (var thing in shown)
        {
            var best = clock.At(SiteClock.Minute(thing.Reach.Best)).Local;
            var frames =
                thing.Fit.Frames == 1 ? "1" : Invariant($"{thing.Fit.Columns} × {thing.Fit.Rows}");
            var size = Invariant(
                $"{thing.Thing.Major!.Value.Arcminutes:0}′ × {TonightJob.Minor(thing.Thing).Arcminutes:0}′"
            );
            output.WriteLine(
                Invariant(
                    $"{thing.Reach.Length.TotalHours, 6:0.0}   {thing.Reach.Highest.Altitude.Degrees, 2:0}° at {best:HH:mm}  {frames, 6}  {100.0 * thing.Fit.Fills, 3:0} %  {size, 11}  {thing.FromMoon.Degrees, 4:0}°  {thing.Thing.Label}, {ObjectWords.Kind(thing.Thing.Type)}"
                )
            );
        }

        output.WriteLine();
        output.WriteLine(
            Invariant(
                $"Clear of the skyline and above {answer.Site.MinAltitude.Degrees:0.#}°; times are those of the clock at the site. Fills: of the tighter side, with {PlanDefaults.Margin.Arcminutes:0}′ of margin."
            )
        );
        if (answer.Things.Count > shown.Count)
        {
            output.WriteLine(
                Invariant(
                    $"{answer.Things.Count - shown.Count} more, most of them without a common name, are listed with --all."
                )
            );
        }
    }

    private static string Word(DarkTime dark) =>
        dark.IsAsWished ? "dark"
        : dark.SunBelow.Degrees < -9.0 ? "nautical"
        : "civil";

    private static string MoonUp(TonightAnswer answer)
    {
        var clock = answer.Site.Clock;
        var up = answer.MoonUp.Select(stretch =>
            stretch switch
            {
                { HeldBefore: true, HoldsAfter: true } => "up all the time",
                { HeldBefore: true } => $"up until {Time(clock, stretch.End)}",
                { HoldsAfter: true } => $"up from {Time(clock, stretch.Start)}",
                _ => $"up from {Time(clock, stretch.Start)} to {Time(clock, stretch.End)}",
            }
        );
        return answer.MoonUp.Count == 0 ? "below the horizon" : string.Join(", ", up);
    }

    private static string Time(SiteClock clock, DateTime utc) =>
        clock.At(SiteClock.Minute(utc)).Local.ToString("HH:mm", CultureInfo.InvariantCulture);

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
