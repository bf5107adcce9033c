using System.CommandLine;
using Framing.Cli.Terminals;
using Framing.Export;
using Framing.Sky;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>Holds test frames against the plan: what to turn, what to press and how long, what to type.</summary>
internal static class CheckCommand
{
    public static Command Make(Terminal terminal)
    {
        var plan = new Argument<string>("PLAN") { Description = "The plan file." };
        var frames = new Argument<string[]>("FRAME")
        {
            Description = "A test frame that knows its place on the sky; or several.",
            Arity = ArgumentArity.ZeroOrMore,
        };
        var panel = new Option<int?>("--panel")
        {
            Description = "Which panel it is to be; without it the nearest.",
            HelpName = "N",
            CustomParser = CommonOptions.Count,
        };
        var after = new Option<string?>("--after")
        {
            Description =
                "The frame before the last move: what the keys really did is learned from the two.",
            HelpName = "FRAME",
        };
        var newest = new Option<string?>("--newest")
        {
            Description =
                "The folder that the camera saves to: its newest finished frame, waited for when the last one was checked already.",
            HelpName = "FOLDER",
        };
        var wait = CommonOptions.Number(
            "--wait",
            "MINUTES",
            "How long --newest waits (30 unless given).",
            0.0,
            1440.0
        );
        var typed = new Option<SkyDirection?>("--typed")
        {
            Description =
                "What was typed into the hand control last, when it was not what the plan or the last check said.",
            HelpName = "RA,DEC",
            CustomParser = result => CommonOptions.Direction(result, "--typed"),
        };
        var dial = CommonOptions.Number(
            "--dial",
            "DEG",
            "What the camera's dial reads at this frame: learned once, dial settings are given from then on.",
            -360.0,
            360.0
        );
        var correct = new Option<bool>("--correct-rig")
        {
            Description = "Write the focal length that the frame shows into the rig's file.",
        };
        var picture = new Option<string?>("--picture")
        {
            Description = "Draw plan and frame, one over the other, into this PNG or SVG file.",
            HelpName = "FILE",
        };
        var size = CommonOptions.Size();
        var palette = CommonOptions.Palette();
        var plugins = CommonOptions.Plugins();
        var json = CommonOptions.Json();
        var command = new Command(
            "check",
            "Holds test frames against the plan: what to turn, what to press and how long, or what to type."
        )
        {
            plan,
            frames,
            panel,
            after,
            newest,
            wait,
            typed,
            dial,
            correct,
            picture,
            size,
            palette,
            plugins,
            json,
        };
        foreach (var file in (Option<string?>[])[after, newest, picture])
        {
            CommonOptions.RefuseEmpty(file);
        }

        command.Validators.Add(result =>
        {
            var count = result.GetResult(frames)?.Tokens.Count ?? 0;
            var newestGiven = result.GetResult(newest) is not null;
            if (count == 0 && !newestGiven)
            {
                result.AddError(
                    "FRAME is missing. Name a test frame, or the folder they come into: --newest FOLDER."
                );
            }
            else if (count > 0 && newestGiven)
            {
                result.AddError("give frames, or --newest FOLDER, not both.");
            }
        });
        command.SetAction(parsed =>
        {
            var shelf = PluginFolders.Open(terminal, parsed.GetValue(plugins));
            var order = new CheckOrder
            {
                PlanPath = parsed.GetValue(plan)!,
                Frames = parsed.GetValue(frames) ?? [],
                WorkingFolder = terminal.Folder,
                Panel = parsed.GetValue(panel),
                After = parsed.GetValue(after),
                NewestOf = parsed.GetValue(newest),
                Wait = parsed.GetValue(wait) is { } minutes
                    ? TimeSpan.FromMinutes(minutes)
                    : TimeSpan.FromMinutes(30.0),
                Typed = parsed.GetValue(typed),
                DialReading = parsed.GetValue(dial) is { } degrees
                    ? Angle.FromDegrees(degrees)
                    : null,
                CorrectRig = parsed.GetValue(correct),
                PicturePath = parsed.GetValue(picture),
                Size = parsed.GetValue(size),
                Palette = parsed.GetValue(palette),
            };
            return Tell(terminal, CheckJob.Run(order, shelf, terminal.Time), parsed.GetValue(json));
        });
        return command;
    }

    private static int Tell(Terminal terminal, CheckDelivery delivery, bool json)
    {
        if (json)
        {
            terminal.Output.Write(CheckWriter.Write(delivery.Frames));
        }
        else
        {
            terminal.Output.Write(string.Join('\n', delivery.Frames.Select(CheckText.Write)));
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
    }
}
