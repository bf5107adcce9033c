using System.CommandLine;
using System.CommandLine.Parsing;
using Framing.Cli.Terminals;
using Framing.Drawing;
using Framing.Export;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>The main job: framing, panels, coverage, report, table, picture.</summary>
internal static class PlanCommand
{
    private const int NamesInALine = 5;

    public static Command Make(Terminal terminal)
    {
        var plan = new Argument<string?>("PLAN")
        {
            Description = "The plan file; without one the built-in example is planned.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var output = new Option<string?>("--out")
        {
            Description = "Where the results go; without it a new folder named for title and date.",
            HelpName = "DIR",
        };
        var date = new Option<DateOnly?>("--date")
        {
            Description = "The evening's date, in place of the plan's.",
            HelpName = "YYYY-MM-DD",
            CustomParser = CommonOptions.Date,
        };
        var size = CommonOptions.Size();
        var palette = CommonOptions.Palette();
        var backdrop = new Option<string?>("--backdrop")
        {
            Description =
                "Your own picture of the region, FITS, PNG, JPEG or TIFF, with a solution: drawn under the chart.",
            HelpName = "FILE",
        };
        var like = new Option<string?>("--like")
        {
            Description = "Centre and camera angle as in this frame, which carries a solution.",
            HelpName = "FRAME",
        };
        var madeUp = new Option<MadeUpParts>("--made-up")
        {
            Description =
                "What the picture may make up, marked as such: faint stars beyond the catalogue, a glow inside the target's outline.",
            HelpName = "stars|nebulae|all",
            CustomParser = MadeUp,
        };
        var plugins = CommonOptions.Plugins();
        var json = CommonOptions.Json();
        var command = new Command(
            "plan",
            "Works out a framing and, for a site, its nights; writes report.json, tables and pictures."
        )
        {
            plan,
            output,
            date,
            size,
            palette,
            backdrop,
            like,
            madeUp,
            plugins,
            json,
        };
        foreach (var file in (Option<string?>[])[output, backdrop, like])
        {
            CommonOptions.RefuseEmpty(file);
        }

        CommonOptions.CheckPlan(plan, command);
        command.SetAction(parsed =>
        {
            var shelf = PluginFolders.Open(terminal, parsed.GetValue(plugins));
            var order = new PlanOrder
            {
                PlanPath = parsed.GetValue(plan),
                OutputFolder = parsed.GetValue(output) is { } folder
                    ? terminal.PathOf(folder)
                    : null,
                WorkingFolder = terminal.Folder,
                Date = parsed.GetValue(date),
                BackdropPath = parsed.GetValue(backdrop),
                LikePath = parsed.GetValue(like),
                MadeUp = parsed.GetValue(madeUp),
                Size = parsed.GetValue(size),
                Palette = parsed.GetValue(palette),
            };
            return Tell(terminal, PlanJob.Run(order, shelf, terminal.Time), parsed.GetValue(json));
        });
        return command;
    }

    private static int Tell(Terminal terminal, PlanDelivery delivery, bool json)
    {
        foreach (var message in delivery.Messages)
        {
            terminal.Error.WriteLine(message);
        }

        var where = delivery.Folder is null
            ? null
            : $"Written to {Path.GetRelativePath(terminal.Folder, delivery.Folder)}:";
        var files = string.Join(
            ",\n  ",
            delivery.Files.Chunk(NamesInALine).Select(names => string.Join(", ", names))
        );
        if (json)
        {
            terminal.Output.Write(delivery.Report);
            if (where is not null)
            {
                terminal.Error.WriteLine($"{where} {string.Join(", ", delivery.Files)}");
            }
        }
        else
        {
            terminal.Output.Write(
                SummaryText.Write(delivery.Plan, delivery.Notes, delivery.Nights)
            );
            terminal.Output.WriteLine();
            terminal.Output.WriteLine(
                where is null ? "Nothing was written." : $"{where}\n  {files}"
            );
        }

        return delivery.Plan.Impossible is null && delivery.Nights is not { NothingToShoot: true }
            ? ExitCode.Done
            : ExitCode.CannotBe;
    }

    private static MadeUpParts MadeUp(ArgumentResult result)
    {
        switch (result.Tokens[0].Value)
        {
            case "stars":
                return MadeUpParts.Stars;
            case "nebulae":
                return MadeUpParts.Nebulae;
            case "all":
                return MadeUpParts.All;
            default:
                result.AddError(
                    $"--made-up: \"{result.Tokens[0].Value}\" cannot be made up; there are stars, nebulae and all."
                );
                return default;
        }
    }
}
