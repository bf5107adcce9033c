using System.CommandLine;
using Framing.Cli.Terminals;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>Says how to move the wedge so that the polar axis points at the pole.</summary>
internal static class PolarCommand
{
    public static Command Make(Terminal terminal)
    {
        var frames = new Argument<string[]>("FRAME")
        {
            Description =
                "Two frames, or three, between which the mount turned in right ascension alone, by 30° to 90°.",
            Arity = new(2, 3),
        };
        var plan = new Option<string?>("--plan")
        {
            Description = "The plan whose site it is; its mount keeps the error that is found.",
            HelpName = "PLAN",
        };
        var site = new Option<string?>("--site")
        {
            Description = "A site file, where no plan is given or it has no site.",
            HelpName = "FILE",
        };
        CommonOptions.RefuseEmpty(plan);
        CommonOptions.RefuseEmpty(site);
        var json = CommonOptions.Json();
        var command = new Command(
            "polar",
            "Finds the error of the polar axis: raise or lower the wedge, swing it east or west."
        )
        {
            frames,
            plan,
            site,
            json,
        };
        command.SetAction(parsed =>
        {
            var delivery = PolarJob.Run(
                new()
                {
                    Frames = parsed.GetValue(frames)!,
                    WorkingFolder = terminal.Folder,
                    PlanPath = parsed.GetValue(plan),
                    SitePath = parsed.GetValue(site),
                }
            );
            if (parsed.GetValue(json))
            {
                JsonOutput.Write(terminal, writer => PolarDocument.Write(writer, delivery));
            }
            else if (delivery.Result.Finding is { } finding)
            {
                PolarText.Write(terminal.Output, finding, delivery.Site);
            }

            foreach (var message in delivery.Messages)
            {
                terminal.Error.WriteLine(message);
            }

            if (delivery.Result.Refusal is { } why)
            {
                terminal.Error.WriteLine($"The axis was not found: {why}.");
                return ExitCode.CannotBe;
            }

            return ExitCode.Done;
        });
        return command;
    }
}
