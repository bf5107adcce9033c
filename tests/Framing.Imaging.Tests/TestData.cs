using System.Text.Json;

namespace Framing.Imaging.Tests;

/// <summary>Files of the Data folder, and throw-away folders.</summary>
internal static class TestData
{
    public static string Path(params string[] parts) =>
        System.IO.Path.Combine([AppContext.BaseDirectory, "Data", .. parts]);

    public static JsonElement Json(params string[] parts) =>
        JsonDocument.Parse(File.ReadAllText(Path(parts))).RootElement;

    /// <summary>Runs with a folder of its own, gone afterwards.</summary>
    public static void InFolder(Action<string> act)
    {
        var folder = Directory.CreateTempSubdirectory("framing-imaging-").FullName;
        try
        {
            act(folder);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Runs with a file of the given content.</summary>
    public static void WithFile(string name, byte[] bytes, Action<string> act) =>
        InFolder(folder =>
        {
            var path = System.IO.Path.Combine(folder, name);
            File.WriteAllBytes(path, bytes);
            act(path);
        });
}
