using System.Globalization;
using Framing.Nights;
using Framing.Sky;

namespace Framing.Cli.Commands;

/// <summary>Writes where a place of the sky is, for a tired person.</summary>
internal static class WhereText
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

    public static void Write(TextWriter output, WhereAnswer answer, SiteClock clock)
    {
        output.WriteLine(answer.Name ?? "Coordinates as given");
        output.WriteLine($"  at       {clock.Text(answer.Utc)}");
        output.WriteLine($"  J2000    {Coordinates(answer.J2000)}");
        output.WriteLine($"  of date  {Coordinates(answer.OfDate)}");
        if (answer.Over is not { } over)
        {
            output.WriteLine("  No site was given: altitude, rise and set need one (--site FILE).");
            return;
        }

        var place = over.Place;
        output.WriteLine(
            FormattableString.Invariant(
                $"  stands   {Height(place.Altitude)}, in the {Wind(place.Azimuth)} (azimuth {Math.Round(place.Azimuth.Degrees) % 360.0:0}°){Air(place.Airmass)}"
            )
        );
        output.WriteLine($"  meridian {HourAngle(place.HourAngle)}");
        output.WriteLine(
            $"  highest  {clock.Text(over.NextTransit)}, {Height(over.HighestPlace.Altitude)}"
        );
        if (over.NextRise is null && over.NextSet is null)
        {
            output.WriteLine(
                place.Altitude > Angle.Zero ? "  It never sets here." : "  It never rises here."
            );
            return;
        }

        var lines = new[] { ("  rises   ", over.NextRise), ("  sets    ", over.NextSet) };
        foreach (var (word, time) in lines.OrderBy(line => line.Item2 ?? DateTime.MaxValue))
        {
            output.WriteLine(
                word + (time is { } known ? $" {clock.Text(known)}" : " not within a day")
            );
        }

        output.WriteLine("  Rise and set are those of a flat horizon.");
    }

    private static string Coordinates(SkyDirection direction) =>
        EntryText.RightAscension(direction.RightAscension, EntryFormat.HmsDms)
        + "  "
        + EntryText.Declination(direction.Declination, EntryFormat.HmsDms);

    private static string Wind(Angle azimuth) =>
        Winds[(int)Math.Round(azimuth.Degrees / 45.0) % Winds.Length];

    private static string Air(double? airmass) =>
        airmass is { } mass
            ? ", airmass " + mass.ToString("0.00", CultureInfo.InvariantCulture)
            : string.Empty;

    private static string HourAngle(Angle angle)
    {
        var minutes = (int)Math.Round(Math.Abs(angle.Hours) * 60.0);
        return minutes == 0
            ? "on it now"
            : FormattableString.Invariant(
                $"{(angle.Hours < 0.0 ? "before" : "past")} it by {minutes / 60}h {minutes % 60:00}m of hour angle"
            );
    }

    private static string Height(Angle altitude)
    {
        var degrees = Math.Round(altitude.Degrees, 1, MidpointRounding.AwayFromZero);
        return FormattableString.Invariant(
            $"{Math.Abs(degrees):0.0}° {(degrees < 0.0 ? "below" : "above")} the horizon"
        );
    }
}
