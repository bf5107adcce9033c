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

    // In brighter twilight the Moon does not matter.
    private static readonly Angle Twilight = Angle.FromDegrees(-12.0);

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
        }
        else
        {
            Events(output, clock, "rises", over.NextRise, "sets", over.NextSet);
            if (over.Skyline is null)
            {
                output.WriteLine("  Rise and set are those of a flat horizon.");
            }
        }

        if (over.Skyline is { } skyline)
        {
            Skyline(output, clock, skyline, place);
        }

        Night(output, clock, over.Night);
        Moon(output, over.Moon, over.Sun.TrueAltitude < Twilight);
        if (answer.Caution is { } caution)
        {
            output.WriteLine("! " + caution);
        }
    }

    private static void Events(
        TextWriter output,
        SiteClock clock,
        string rises,
        DateTime? rise,
        string sets,
        DateTime? set
    )
    {
        foreach (
            var (word, time) in new[] { (rises, rise), (sets, set) }.OrderBy(line =>
                line.Item2 ?? DateTime.MaxValue
            )
        )
        {
            output.WriteLine(
                $"  {word, -8} {(time is { } known ? clock.Text(known) : "not within a day")}"
            );
        }
    }

    private static void Skyline(
        TextWriter output,
        SiteClock clock,
        OverSkyline skyline,
        HorizontalPlace place
    )
    {
        output.WriteLine(
            FormattableString.Invariant(
                $"  skyline  {skyline.SkylineAltitude.Degrees:0.0}° high there: {(skyline.IsClear ? "it stands clear of it" : place.Altitude > Angle.Zero ? "it stands behind it" : "it is below")}"
            )
        );
        if (skyline.NextRise is not null || skyline.NextSet is not null)
        {
            Events(output, clock, "appears", skyline.NextRise, "vanishes", skyline.NextSet);
        }
        else if (!skyline.IsClear)
        {
            output.WriteLine("  It never comes over the skyline here.");
        }
    }

    private static void Night(TextWriter output, SiteClock clock, NightOfSun night)
    {
        output.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"  night    of {night.Evening:yyyy-MM-dd}: {night.Words}"
            )
        );
        foreach (var dark in night.Dark)
        {
            output.WriteLine(
                dark is { HeldBefore: true, HoldsAfter: true }
                    ? "  dark     all the day round"
                    : $"  dark     from {clock.Text(dark.Start)}\n           to   {clock.Text(dark.End)}"
            );
        }

        foreach (var change in clock.Changes(night.Start, night.End))
        {
            output.WriteLine($"  clocks   {clock.Text(change.Utc)}: {change.Words}");
        }
    }

    private static void Moon(TextWriter output, MoonOverSite moon, bool dark)
    {
        output.WriteLine(
            FormattableString.Invariant(
                $"  Moon     {moon.Phase.Words}; {Height(moon.Sight.Place.Altitude)}, {moon.Separation.Degrees:0}° from here"
            )
        );
        if (dark && moon.Light.Factor >= 1.05)
        {
            output.WriteLine(
                FormattableString.Invariant(
                    $"           It makes the sky here about {moon.Light.Factor:0.0} times as bright ({moon.Light.Magnitudes:0.0} mag; against {MoonOverSite.DarkSky:0.0} mag/arcsec² without it, in V,"
                )
            );
            output.WriteLine(
                "           clear air; Krisciunas and Schaefer 1991, good to a quarter or so)."
            );
        }
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
