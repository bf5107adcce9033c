using System.CommandLine;
using System.CommandLine.Invocation;
using Framing.Cli.Terminals;
using Framing.Workshop;

namespace Framing.Cli;

/// <summary>Prints the version in one line.</summary>
internal sealed class VersionAction(Terminal terminal) : SynchronousCommandLineAction
{
    public override int Invoke(ParseResult parseResult)
    {
        terminal.Output.WriteLine(ProgramVersion.Text);
        return ExitCode.Done;
    }
}
