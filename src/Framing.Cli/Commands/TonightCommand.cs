using System.CommandLine;
using System.CommandLine.Parsing;
using Framing.Cli.Terminals;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>Says what fits a rig tonight.</summary>
internal static class TonightCommand
{
    public static Command Make(Terminal terminal)
    {
        var rig = new Argument<string>("RIG")
        {
            Description =
                "A rig file: focal_length_mm, sensor_px, pixel_um, as in [rig] of a plan.",
        };
        var site = new Argument<string>("SITE")
        {
            Description = "A site file: latitude_deg, longitude_deg, … as in [site] of a plan.",
        };
        foreach (var file in (Argument<string>[])[rig, site])
        {
            file.Validators.Add(result =>
            {
                if (result.Tokens is [{ Value: var name }] && string.IsNullOrWhiteSpace(name))
                {
                    result.AddError($"the name of the {file.Name} file is empty.");
                }
            });
        }

        var date = new Option<DateOnly?>("--date")
        {
            Description = "The evening's date, in place of tonight.",
            HelpName = "YYYY-MM-DD",
            CustomParser = CommonOptions.Date,
        };
        var all = new Option<bool>("--all")
        {
            Description = "List everything; without it what has a common name, forty at most.",
        };
        var json = CommonOptions.Json();
        var command = new Command(
            "tonight",
            "What fits this rig tonight: a table by dark hours above the horizon."
        )
        {
            rig,
            site,
            date,
            all,
            json,
        };
        command.SetAction(parsed =>
        {
            var lens = PlanFileReader.ReadRig(terminal.PathOf(parsed.GetValue(rig)!));
            var place = PlanFileReader.ReadSite(terminal.PathOf(parsed.GetValue(site)!));
            var evening =
                parsed.GetValue(date)
                ?? TonightJob.EveningAt(place, terminal.Time.GetUtcNow().UtcDateTime);
            var answer = TonightJob.Run(lens, place, evening);
            if (parsed.GetValue(json))
            {
                JsonOutput.Write(terminal, writer => TonightDocument.Write(writer, answer));
            }
            else
            {
                TonightText.Write(terminal.Output, answer, parsed.GetValue(all));
            }

            return answer.Things.Count > 0 ? ExitCode.Done : ExitCode.CannotBe;
        });
        return command;
    }
}
