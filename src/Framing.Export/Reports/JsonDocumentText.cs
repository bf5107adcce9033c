using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Framing.Export;

/// <summary>Writes JSON documents as the program gives them: indented, lines that end in a line feed, signs readable.</summary>
public static class JsonDocumentText
{
    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        NewLine = "\n",

        // The document is UTF-8 and goes into no web page: minutes and degree signs stay readable.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Writes one document.</summary>
    /// <param name="members">Writes the members of its object.</param>
    /// <returns>UTF-8 text without a byte order mark and without a line feed at its end.</returns>
    public static string Write(Action<Utf8JsonWriter> members)
    {
        ArgumentNullException.ThrowIfNull(members);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Options))
        {
            json.WriteStartObject();
            members(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.GetBuffer().AsSpan(0, (int)stream.Length));
    }
}
