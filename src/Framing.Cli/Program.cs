using System.Text;
using Framing.Cli.Terminals;

namespace Framing.Cli;

internal static class Program
{
    private static int Main(string[] args)
    {
        // Minutes of arc and degree signs must survive whatever the locale says, and no byte order mark may lead a JSON document.
        var utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        using var output = new StreamWriter(Console.OpenStandardOutput(), utf8)
        {
            AutoFlush = false,
        };
        using var error = new StreamWriter(Console.OpenStandardError(), utf8) { AutoFlush = true };
        var terminal = new Terminal(
            output,
            error,
            TimeProvider.System,
            Environment.CurrentDirectory
        );
        return CommandLine.Run(args, terminal);
    }
}
