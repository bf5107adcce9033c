using System.CommandLine;
using Framing.Cli.Terminals;
using Framing.Export;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>Adds up all frames so far against the plan.</summary>
internal static class TallyCommand
{
    public static Command Make(Terminal terminal)
    {
        var plan = new Argument<string>("PLAN") { Description = "The plan file." };
        var folder = new Argument<string>("FOLDER")
        {
            Description =
                "The folder that holds the frames; folders in it are looked through, too.",
        };
        var picture = new Option<string?>("--picture")
        {
            Description =
                "Draw how long each place was exposed into this PNG or SVG file; one a filter.",
            HelpName = "FILE",
        };
        CommonOptions.RefuseEmpty(picture);
        var size = CommonOptions.Size();
        var palette = CommonOptions.Palette();
        var plugins = CommonOptions.Plugins();
        var json = CommonOptions.Json();
        var command = new Command(
            "tally",
            "All frames so far against the plan: time per panel and filter, what is missing, what to shoot next."
        )
        {
            plan,
            folder,
            picture,
            size,
            palette,
            plugins,
            json,
        };
        command.SetAction(parsed =>
        {
            var shelf = PluginFolders.Open(terminal, parsed.GetValue(plugins));
            var delivery = TallyJob.Run(
                new()
                {
                    PlanPath = parsed.GetValue(plan)!,
                    Folder = parsed.GetValue(folder)!,
                    WorkingFolder = terminal.Folder,
                    PicturePath = parsed.GetValue(picture),
                    Size = parsed.GetValue(size),
                    Palette = parsed.GetValue(palette),
                },
                shelf,
                terminal.Time
            );
            if (delivery.Tally is { } tally)
            {
                terminal.Output.Write(
                    parsed.GetValue(json) ? TallyWriter.Write(tally) : TallyText.Write(tally)
                );
            }

            foreach (var message in delivery.Messages)
            {
                terminal.Error.WriteLine(message);
            }

            if (delivery.Impossible is { } why)
            {
                terminal.Error.WriteLine(why);
                return ExitCode.CannotBe;
            }

            return ExitCode.Done;
        });
        return command;
    }
}
