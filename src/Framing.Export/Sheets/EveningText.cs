using System.Text;
using Framing.Nights;
using Framing.Planning;
using Framing.Sky;

namespace Framing.Export;

/// <summary>Says the sums of an evening in plain words: trails, air, scales, files, power, what to type, where to align.</summary>
internal static class EveningText
{
    private static readonly string[] Winds =
    [
        "north",
        "north-east",
        "east",
        "south-east",
        "south",
        "south-west",
        "west",
        "north-west",
    ];

    public static void Write(StringBuilder text, EveningNotes notes, FramingRequest request)
    {
        text.Append('\n');
        var evening = notes.Evening;
        Lines.Wrap(text, "Scale   ", Scale(evening.Sums));
        Lines.Wrap(text, "Trails  ", Trails(evening.Trailing));
        Lines.Wrap(text, "Creep   ", Creep(evening.Trailing));
        if (Air(evening.Trailing, request.Rig) is { } air)
        {
            Lines.Wrap(text, "Air     ", air);
        }

        if (evening.Sums.Wanted > 0)
        {
            Lines.Wrap(text, "Files   ", Files(evening.Sums));
        }

        if (evening.Power is { } power)
        {
            Lines.Wrap(text, "Power   ", Power(power));
        }

        SwitchOn(text, notes.SwitchOn);
        Alignment(text, notes, request);
    }

    /// <summary>A star's coordinates as the plan's hand control takes them.</summary>
    public static (string Ra, string Dec) Entry(AlignmentStar star, FramingRequest request)
    {
        var direction = request.GotoFrame == GotoFrame.OfDate ? star.OfDate : star.Star.Icrs;
        return (
            EntryText.RightAscension(direction.RightAscension, request.EntryFormat),
            EntryText.Declination(direction.Declination, request.EntryFormat)
        );
    }

    private static string Scale(RigSums sums)
    {
        var guide = sums
            is { GuideScale: { } scale, GuideRatio: { } ratio, GuideErrorPx: { } error }
            ? Invariant(
                $" A guide pixel spans {scale.Arcseconds:0.0}″, {ratio:0.0} image pixels: guiding holds to about {error:0.0} px."
            )
            : string.Empty;
        return Invariant(
                $"{sums.Scale.Arcseconds:0.00}″ a pixel; seeing of {sums.Seeing.Arcseconds:0.#}″ spreads a star over {sums.PixelsPerSeeing:0.0} px."
            ) + guide;
    }

    private static string Trails(TrailingSums trailing)
    {
        var corner =
            trailing.GuideStar == GuideStar.Corner
                ? "guide star in the opposite corner"
                : "guide star in the middle";
        var text = new StringBuilder();
        text.Append(
            Invariant(
                $"With the axis {trailing.PolarError.Arcminutes:0.#}′ off the pole the worst corner allows subs of {Longest(trailing.Guided)} guided ({corner}), {Longest(trailing.Unguided)} unguided, for {trailing.LimitPx:0.#} px."
            )
        );
        foreach (var sub in trailing.Subs)
        {
            text.Append(
                Invariant(
                    $" {sub.Filter}, {sub.Sub.TotalSeconds:0.#} s: {sub.GuidedPx:0.0} px guided, {sub.UnguidedPx:0.0} px unguided; fine with the axis up to {Minutes(sub.ErrorGuided)} off guided, {Minutes(sub.ErrorUnguided)} unguided."
                )
            );
        }

        return text.ToString();
    }

    private static string Longest(StarTrail trail) =>
        trail.Longest is { } longest
            ? longest.TotalHours >= 3.0
                ? Invariant($"{Math.Floor(longest.TotalHours):0} h")
                : Invariant($"{Math.Floor(longest.TotalSeconds):0} s")
            : "any length";

    private static string Creep(TrailingSums trailing) =>
        Invariant(
            $"In {Hours(trailing.Session)} under the sky the field creeps by up to {trailing.Creep.Arcminutes:0.#}′ where nobody brings it back, and the camera angle turns by up to {trailing.Turn.Degrees:0.0}°."
        );

    private static string? Air(TrailingSums trailing, Rig rig)
    {
        if (trailing is not { Lowest: { } lowest, SqueezeLow: { } low })
        {
            return null;
        }

        var text = Invariant(
            $"At {lowest.Degrees:0}° of altitude the air squeezes the frame's long side by {low.Vertical.Arcseconds:0}″ ({low.Vertical / rig.Scale:0.0} px)"
        );
        if (trailing is { Highest: { } highest, SqueezeHigh: { } high })
        {
            text += Invariant($", at {highest.Degrees:0}° by {high.Vertical.Arcseconds:0}″");
        }

        return text
            + (low.Vertical / rig.Scale >= 1.0 ? ": let stacking stretch, not only shift." : ".");
    }

    private static string Files(RigSums sums) =>
        sums.InTheNight is { } subs
            ? Invariant(
                $"{Bytes(sums.FrameBytes)} a frame; {subs} subs, {Bytes(sums.Bytes)}, in the night, of {sums.Wanted} wanted in all."
            )
            : Invariant(
                $"{Bytes(sums.FrameBytes)} a frame; {sums.Wanted} subs wanted in all, {Bytes(sums.Bytes)}."
            );

    private static string Power(PowerBudget power)
    {
        var left = power.HoursLeft switch
        {
            null => "nothing draws on the battery.",
            >= 0.0 => Invariant(
                $"it lasts {power.HoursAvailable:0.0} h of {power.HoursNeeded:0.0} h needed: {power.HoursLeft:0.0} h left."
            ),
            _ => Invariant(
                $"it lasts {power.HoursAvailable:0.0} h of {power.HoursNeeded:0.0} h needed: {-power.HoursLeft:0.0} h short."
            ),
        };
        return Invariant(
                $"{power.AverageWatts:0.0} W on average from {power.UsableWattHours:0} Wh that may be drawn in the cold, spare kept: "
            ) + left;
    }

    private static void SwitchOn(StringBuilder text, SwitchOn? entry)
    {
        if (entry is null)
        {
            return;
        }

        text.Append('\n')
            .Append("When switched on, the hand control asks for\n")
            .Append(
                $"  time             {entry.TimeText} when you begin; type what the clock shows\n"
            )
            .Append($"  zone             {entry.ZoneText} ({entry.ZoneName})\n")
            .Append($"  daylight saving  {(entry.IsDaylightSaving ? "yes" : "no")}\n")
            .Append($"  date             {entry.DateText} ({entry.DateOrderText})\n")
            .Append($"  site             {entry.LatitudeText}, {entry.LongitudeText}\n");
        if (entry.Change is { } change)
        {
            Lines.Wrap(
                text,
                "  in the night     ",
                change.Words + "; the hand control goes on as it was set."
            );
        }
    }

    private static void Alignment(StringBuilder text, EveningNotes notes, FramingRequest request)
    {
        if (notes.Alignment is not { } alignment)
        {
            return;
        }

        text.Append('\n');
        if (alignment.Stars.Count == 0)
        {
            Lines.Wrap(
                text,
                "Align   ",
                $"no bright star stands well at {Time(notes.Clock, alignment.At)}."
            );
            return;
        }

        text.Append(
            $"To align on at {Time(notes.Clock, alignment.At)} ({(request.GotoFrame == GotoFrame.OfDate ? "numbers of date" : "numbers of J2000")})\n"
        );
        var entries = alignment.Stars.Select(star => (Star: star, Entry: Entry(star, request)));
        var rows = entries.ToList();
        var name = rows.Max(row => row.Star.Star.Name.Length);
        var ra = rows.Max(row => row.Entry.Ra.Length);
        var dec = rows.Max(row => row.Entry.Dec.Length);
        foreach (var (star, entry) in rows)
        {
            text.Append("  ")
                .Append(star.Star.Name.PadRight(name + 2))
                .Append(entry.Ra.PadLeft(ra))
                .Append("  ")
                .Append(entry.Dec.PadLeft(dec))
                .Append(
                    Invariant(
                        $"   {star.Place.Altitude.Degrees:0}° high in the {Wind(star.Place.Azimuth)}, magnitude {star.Star.Magnitude:0.0}\n"
                    )
                );
        }
    }

    private static string Time(SiteClock clock, DateTime utc)
    {
        var at = clock.At(SiteClock.Minute(utc));
        return Invariant($"{at.Local:HH:mm} (UTC{at.OffsetText})");
    }

    private static string Wind(Angle azimuth) =>
        Winds[(int)Math.Round(azimuth.Degrees / 45.0) % Winds.Length];

    private static string Hours(TimeSpan time) => Invariant($"{time.TotalHours:0.0} h");

    private static string Minutes(Angle error) =>
        error.Degrees >= 5.0 ? Invariant($"{Math.Floor(error.Degrees):0}°")
        : error.Arcminutes >= 10.0 ? Invariant($"{Math.Floor(error.Arcminutes):0}′")
        : Invariant($"{Math.Floor(error.Arcminutes * 10.0) / 10.0:0.0}′");

    private static string Bytes(double bytes) =>
        bytes >= 1e9 ? Invariant($"{bytes / 1e9:0.0} GB") : Invariant($"{bytes / 1e6:0.0} MB");

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
