using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Framing.Catalogue;
using Framing.Cli.Terminals;
using Framing.Nights;
using Framing.Sky;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>Says where one place of the sky is: coordinates, and over a site its altitude and what it does next.</summary>
internal static class WhereCommand
{
    private const int FirstYear = 1950;
    private const int LastYear = 2100;

    private static readonly string[] TimeForms =
    [
        "yyyy-MM-dd'T'HH:mm'Z'",
        "yyyy-MM-dd'T'HH:mm:ss'Z'",
        "yyyy-MM-dd'T'HH:mm:ss.FFFFFFF'Z'",
        "yyyy-MM-dd'T'HH:mmzzz",
        "yyyy-MM-dd'T'HH:mm:sszzz",
        "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFzzz",
    ];

    public static Command Make(Terminal terminal)
    {
        var words = new Argument<string[]>("NAME-or-RA,DEC")
        {
            Description =
                "A name (heart nebula, vega), or J2000 coordinates: 38.34,61.45 or 2h33m21s,+61d27m10s.",
            Arity = ArgumentArity.OneOrMore,
        };
        var site = new Option<string?>("--site")
        {
            Description = "A site file: latitude_deg, longitude_deg, … as in [site] of a plan.",
            HelpName = "FILE",
        };
        CommonOptions.RefuseEmpty(site);
        var at = new Option<DateTime?>("--at")
        {
            Description = "When: 2026-11-20T21:00Z, or with an offset, 2026-11-20T22:00+01:00.",
            HelpName = "TIME",
            CustomParser = Time,
        };
        var json = CommonOptions.Json();
        var command = new Command(
            "where",
            "Where a place of the sky is now: coordinates of date, altitude, next rise and set."
        )
        {
            words,
            site,
            at,
            json,
        };
        command.SetAction(parsed =>
        {
            var (entry, direction) = PlaceWords.Read(
                "where",
                string.Join(' ', parsed.GetValue(words)!)
            );
            var utc = parsed.GetValue(at) ?? terminal.Time.GetUtcNow().UtcDateTime;
            var file = parsed.GetValue(site);
            var section = file is null ? null : PlanFileReader.ReadSite(terminal.PathOf(file));
            var clock = section?.Clock ?? SiteClock.Utc;
            var answer = WhereAnswer.Of(entry, direction, utc, section?.Observer);
            if (parsed.GetValue(json))
            {
                JsonOutput.Write(terminal, writer => WhereDocument.Write(writer, answer));
            }
            else
            {
                WhereText.Write(terminal.Output, answer, clock);
            }

            return ExitCode.Done;
        });
        return command;
    }

    private static DateTime? Time(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (
            !DateTimeOffset.TryParseExact(
                text,
                TimeForms,
                CultureInfo.InvariantCulture,
                DateTimeStyles.AssumeUniversal,
                out var time
            )
        )
        {
            result.AddError(
                $"--at: \"{text}\" is no time with its offset; write 2026-11-20T21:00Z or 2026-11-20T22:00+01:00."
            );
            return null;
        }

        if (time.UtcDateTime.Year is < FirstYear or > LastYear)
        {
            result.AddError(
                FormattableString.Invariant(
                    $"--at: \"{text}\" is outside of the years {FirstYear} to {LastYear}."
                )
            );
            return null;
        }

        return time.UtcDateTime;
    }
}
