using System.Globalization;
using Framing.Nights;
using Framing.Sky;

namespace Framing.Benchmarks;

/// <summary>A night at one-minute steps: Sun, Moon and a target over a site, from nothing to all places.</summary>
internal static class NightTopic
{
    private const int Runs = 15;
    private const int Minutes = 720;
    private const double RightAscension = 38.2;
    private const double Declination = 61.45;

    private static readonly DateTime Start = new(2026, 3, 20, 18, 0, 0, DateTimeKind.Utc);

    // No air, as the rival has none.
    private static readonly ObservingSite Site = new(
        Angle.FromDegrees(47.0),
        Angle.FromDegrees(10.0),
        800.0,
        new(0.0, 5.0)
    );

    public static int Run(string[] arguments)
    {
        var minutes =
            arguments is [var text]
            && int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var wished)
            && wished is >= 2 and <= 14_400
                ? wished
                : Minutes;
        Console.WriteLine(
            FormattableString.Invariant($"Sun, Moon and a target at {minutes} times, one thread")
        );
        var file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        try
        {
            // Both kinds of work twice by turns, so that a busy machine is busy for both.
            var (first, _) = Stopwatches.Time("  all places", Runs, () => Night(minutes));
            var rival = Rival(minutes, file);
            var (second, places) = Stopwatches.Time("  all places", Runs, () => Night(minutes));
            var again = Rival(minutes, file);
            Stopwatches.Ratio(
                "  the better of both",
                Math.Min(first, second),
                Math.Min(rival, again)
            );
            Differences(file, places);
        }
        finally
        {
            File.Delete(file);
        }

        return 0;
    }

    private static double Rival(int minutes, string file) =>
        Benchmarks.Rival.Run(
            "night.py",
            minutes.ToString(CultureInfo.InvariantCulture),
            Runs.ToString(CultureInfo.InvariantCulture),
            RightAscension.ToString(CultureInfo.InvariantCulture),
            Declination.ToString(CultureInfo.InvariantCulture),
            file
        )["night"];

    private static HorizontalPlace[][] Night(int minutes)
    {
        var hours = new SiteHours(Site, Start, Start.AddMinutes(minutes));
        var path = hours.Follow(SkyDirection.FromDegrees(RightAscension, Declination));
        HorizontalPlace[][] places =
        [
            new HorizontalPlace[minutes],
            new HorizontalPlace[minutes],
            new HorizontalPlace[minutes],
        ];
        for (var i = 0; i < minutes; i++)
        {
            var utc = Start.AddMinutes(i);
            places[0][i] = hours.Sun(utc);
            places[1][i] = hours.Moon(utc).Place;
            places[2][i] = path.At(utc);
        }

        return places;
    }

    private static void Differences(string file, HorizontalPlace[][] places)
    {
        string[] names = ["Sun", "Moon", "target"];
        var rows = File.ReadAllLines(file)[1..];
        for (var body = 0; body < names.Length; body++)
        {
            var worst = 0.0;
            for (var i = 0; i < rows.Length; i++)
            {
                var judged = double.Parse(rows[i].Split(',')[body], CultureInfo.InvariantCulture);
                worst = Math.Max(
                    worst,
                    Math.Abs(judged - places[body][i].TrueAltitude.Degrees) * 3600.0
                );
            }

            Console.WriteLine(
                FormattableString.Invariant(
                    $"{"  " + names[body] + ": largest difference in altitude", -44} {worst:0.000}″"
                )
            );
        }
    }
}
