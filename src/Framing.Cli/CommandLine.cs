using System.CommandLine;
using Framing.Cli.Commands;
using Framing.Cli.Terminals;
using Framing.Fits;
using Framing.Workshop;

namespace Framing.Cli;

/// <summary>Reads the words and flags, runs the command, and turns every failure into one line and an exit code.</summary>
internal static class CommandLine
{
    public static int Run(string[] args, Terminal terminal)
    {
        try
        {
            return RunCommand(args, terminal);
        }
        catch (InputException wrong)
        {
            terminal.Error.WriteLine(wrong.Message);
            return ExitCode.WrongInput;
        }
        catch (UnreadableFileException unreadable)
        {
            terminal.Error.WriteLine(OneLine(unreadable.Message));
            return ExitCode.WrongInput;
        }
        catch (IOException broken)
        {
            terminal.Error.WriteLine(OneLine(broken.Message));
            return ExitCode.WrongInput;
        }
        catch (UnauthorizedAccessException refused)
        {
            terminal.Error.WriteLine(OneLine(refused.Message));
            return ExitCode.WrongInput;
        }
#pragma warning disable CA1031 // The last door: whatever else comes is a fault of the program, told in one line.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            terminal.Error.WriteLine(
                $"framing made a mistake of its own: {fault.GetType().Name}: {OneLine(fault.Message)} "
                    + $"Please report it with the plan file, the command, version {ProgramVersion.Text} and this: {Place(fault)}"
            );
            return ExitCode.Fault;
        }
        finally
        {
            terminal.Output.Flush();
        }
    }

    private static int RunCommand(string[] args, Terminal terminal)
    {
        var root = new RootCommand(
            "Plans how to frame large nebulae: camera angle, panels, coordinates. Works offline. «framing plan» without a file shows an example."
        );
        root.Subcommands.Add(PlanCommand.Make(terminal));
        root.Subcommands.Add(FindCommand.Make(terminal));
        root.Subcommands.Add(WhereCommand.Make(terminal));
        root.Subcommands.Add(TonightCommand.Make(terminal));
        root.Subcommands.Add(InspectCommand.Make(terminal));
        root.Subcommands.Add(SolveCommand.Make(terminal));
        root.Subcommands.Add(CheckCommand.Make(terminal));
        root.Subcommands.Add(KeysCommand.Make(terminal));
        root.Subcommands.Add(PolarCommand.Make(terminal));
        root.Subcommands.Add(RehearseCommand.Make(terminal));
        root.Subcommands.Add(TallyCommand.Make(terminal));
        root.Subcommands.Add(StrategiesCommand.Make(terminal));
        root.Subcommands.Add(ServeCommand.Make(terminal));
        foreach (var option in root.Options.OfType<VersionOption>())
        {
            option.Action = new VersionAction(terminal);
        }

        // A plan file may be called @home.toml, and nothing here answers to [words in brackets].
        root.Directives.Clear();
        var parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parsed.Errors.Count > 0 || parsed.UnmatchedTokens.Count > 0)
        {
            terminal.Error.WriteLine(WrongWords.Explain(parsed));
            return ExitCode.WrongInput;
        }

        return parsed.Invoke(
            new InvocationConfiguration
            {
                Output = terminal.Output,
                Error = terminal.Error,
                EnableDefaultExceptionHandler = false,
            }
        );
    }

    private static string OneLine(string text) => text.ReplaceLineEndings(" ");

    private static string Place(Exception fault) =>
        (fault.StackTrace ?? "no place known")
            .Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .FirstOrDefault(string.Empty);
}
