using System.Text.Json;
using Framing.Export;

namespace Framing.Cli.Terminals;

/// <summary>Prints one JSON document.</summary>
internal static class JsonOutput
{
    public static void Write(Terminal terminal, Action<Utf8JsonWriter> members) =>
        terminal.Output.WriteLine(JsonDocumentText.Write(members));
}
