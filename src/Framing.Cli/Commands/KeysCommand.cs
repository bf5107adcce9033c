using System.CommandLine;
using Framing.Cli.Terminals;
using Framing.Export;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>Learns what a key really does from a frame before and one after it was held.</summary>
internal static class KeysCommand
{
    public static Command Make(Terminal terminal)
    {
        var plan = new Argument<string>("PLAN") { Description = "The plan file." };
        var before = new Argument<string>("BEFORE")
        {
            Description = "A frame from before the key was held.",
        };
        var after = new Argument<string>("AFTER") { Description = "A frame from after it." };
        var pressed = new Option<string>("--pressed")
        {
            Description = "The key: east, west, north, south, or what is printed on it.",
            HelpName = "KEY",
            Required = true,
        };
        var seconds = CommonOptions.Number("--seconds", "S", "How long it was held.", 0.5, 600.0);
        seconds.Required = true;
        var speed = new Option<string?>("--speed")
        {
            Description = "The label of the speed; without it the one that fits the motion best.",
            HelpName = "LABEL",
        };
        CommonOptions.RefuseEmpty(speed);
        var json = CommonOptions.Json();
        var command = new Command(
            "keys",
            "Learns what a key really does, direction, rate and play of the gear, from two frames."
        )
        {
            plan,
            before,
            after,
            pressed,
            seconds,
            speed,
            json,
        };
        command.SetAction(parsed =>
        {
            var delivery = KeysJob.Run(
                new()
                {
                    PlanPath = parsed.GetValue(plan)!,
                    Before = parsed.GetValue(before)!,
                    After = parsed.GetValue(after)!,
                    WorkingFolder = terminal.Folder,
                    Pressed = parsed.GetValue(pressed)!,
                    Seconds = parsed.GetValue(seconds)!.Value,
                    Speed = parsed.GetValue(speed),
                }
            );
            if (parsed.GetValue(json))
            {
                terminal.Output.Write(KeyWriter.Write(delivery.Result));
            }
            else if (delivery.Result.Finding is { } finding)
            {
                terminal.Output.Write(KeyText.Write(finding, delivery.Handling.KeyAddsToTracking));
            }

            foreach (var message in delivery.Messages)
            {
                terminal.Error.WriteLine(message);
            }

            if (delivery.Result.Refusal is { } why)
            {
                terminal.Error.WriteLine($"Nothing was learned: {why}.");
                return ExitCode.CannotBe;
            }

            return ExitCode.Done;
        });
        return command;
    }
}
