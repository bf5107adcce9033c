using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using System.Net;
using System.Runtime.InteropServices;
using Framing.Cli.Terminals;
using Framing.Web;
using Framing.Workshop;

namespace Framing.Cli.Commands;

/// <summary>The page on this machine.</summary>
internal static class ServeCommand
{
    private const string NewPlan = "plan.toml";

    public static Command Make(Terminal terminal)
    {
        var plan = new Argument<string?>("PLAN")
        {
            Description =
                $"The plan file; without one, {NewPlan} of this folder, which is started where there is none.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var port = new Option<int>("--port")
        {
            Description = "The port on which the page answers; without it one that is free.",
            HelpName = "N",
            CustomParser = Port,
        };
        var address = new Option<IPAddress>("--address")
        {
            Description =
                "The address on which the page answers: 127.0.0.1 (this machine alone) unless given. On another one a code is asked for.",
            HelpName = "A",
            CustomParser = Address,
            DefaultValueFactory = _ => IPAddress.Loopback,
        };
        var plugins = CommonOptions.Plugins();
        var command = new Command("serve", "Opens a plan as a page in the browser of this machine.")
        {
            plan,
            port,
            address,
            plugins,
        };
        command.SetAction(
            (parsed, cancel) =>
                Serve(
                    terminal,
                    terminal.PathOf(parsed.GetValue(plan) ?? NewPlan),
                    parsed.GetValue(port),
                    parsed.GetValue(address)!,
                    parsed.GetValue(plugins),
                    cancel
                )
        );
        return command;
    }

    private static async Task<int> Serve(
        Terminal terminal,
        string plan,
        int port,
        IPAddress address,
        string? plugins,
        CancellationToken cancel
    )
    {
        if (Directory.Exists(plan))
        {
            throw new InputException($"{plan}: this is a folder; name a plan file in it.");
        }

        if (!Directory.Exists(Path.GetDirectoryName(plan)))
        {
            throw new InputException($"{plan}: there is no such folder.");
        }

        var shelf = PluginFolders.Open(terminal, plugins);
        var desk = PlanDesk.Open(plan, shelf, terminal.Time);
        await using var page = await PageServer.Start(
            new()
            {
                Desk = desk,
                Shelf = shelf,
                Address = address,
                Port = port,
            },
            cancel
        );
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        using var ended = PosixSignalRegistration.Create(
            PosixSignal.SIGTERM,
            context =>
            {
                context.Cancel = true;
                stop.Cancel();
            }
        );
        using var broken = PosixSignalRegistration.Create(
            PosixSignal.SIGINT,
            context =>
            {
                context.Cancel = true;
                stop.Cancel();
            }
        );
        Tell(terminal, desk, page);
        await page.Run(stop.Token);
        terminal.Output.WriteLine(
            desk.IsSaved
                ? "Stopped."
                : $"Stopped. Changes that are not saved lie in {desk.Path}{PlanDesk.UnsavedSuffix}; the page goes on with them next time."
        );
        return ExitCode.Done;
    }

    private static void Tell(Terminal terminal, PlanDesk desk, PageServer page)
    {
        var output = terminal.Output;
        output.WriteLine($"{Path.GetFileName(desk.Path)} is open at {page.Address}");
        if (page.IsLocal)
        {
            output.WriteLine(
                "It answers on this machine alone. For a telephone add --address and this machine's address in its network."
            );
        }
        else
        {
            TellCode();
            page.CodeRenewed += (_, _) => TellCode();
        }

        output.WriteLine("Ctrl+C stops it.");
        output.Flush();

        void TellCode()
        {
            output.WriteLine();
            output.Write(QrText.Of(page.AddressWithCode));
            output.WriteLine($"Open {page.AddressWithCode}");
            output.WriteLine(
                $"or enter the code {page.Code} there. It lets one device in; then a new one is shown."
            );
            output.Flush();
        }
    }

    private static int Port(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (
            int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var port)
            && port is >= 0 and <= 65_535
        )
        {
            return port;
        }

        result.AddError(
            $"--port: \"{text}\" is no port; give a whole number from 1024 to 65535, or leave it out."
        );
        return 0;
    }

    private static IPAddress Address(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (string.Equals(text, "localhost", StringComparison.OrdinalIgnoreCase))
        {
            return IPAddress.Loopback;
        }

        if (IPAddress.TryParse(text, out var address))
        {
            return address;
        }

        result.AddError(
            $"--address: \"{text}\" is no address; give this machine's own in its network, such as 192.168.4.1."
        );
        return IPAddress.Loopback;
    }
}
