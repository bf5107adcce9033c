using System.Reflection;
using System.Text.Json;

namespace Framing.Sky.Tests;

/// <summary>Reads the files of the Data folder, which travel inside the test program.</summary>
internal static class TestData
{
    public static Stream Stream(string name) =>
        Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
        ?? throw new FileNotFoundException($"The Data folder holds no {name}.");

    public static string Text(string name)
    {
        using var stream = Stream(name);
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    public static JsonElement Json(string name) =>
        JsonDocument.Parse(Text(name)).RootElement.Clone();
}
