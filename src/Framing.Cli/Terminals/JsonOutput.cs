using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Framing.Cli.Terminals;

/// <summary>Prints one JSON document.</summary>
internal static class JsonOutput
{
    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static void Write(Terminal terminal, Action<Utf8JsonWriter> members)
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream, Options))
        {
            writer.WriteStartObject();
            members(writer);
            writer.WriteEndObject();
        }

        terminal.Output.WriteLine(Encoding.UTF8.GetString(stream.ToArray()));
    }
}
