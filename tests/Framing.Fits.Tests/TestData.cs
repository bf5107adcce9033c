using System.Text.Json;

namespace Framing.Fits.Tests;

/// <summary>Files of the Data folder, and throw-away folders.</summary>
internal static class TestData
{
    public static string Path(params string[] parts) =>
        System.IO.Path.Combine([AppContext.BaseDirectory, "Data", .. parts]);

    public static JsonElement Json(params string[] parts) =>
        JsonDocument.Parse(File.ReadAllText(Path(parts))).RootElement;

    public static double[] Doubles(JsonElement array) =>
        [
            .. array
                .EnumerateArray()
                .Select(item =>
                    item.ValueKind == JsonValueKind.Null ? double.NaN : item.GetDouble()
                ),
        ];

    /// <summary>Runs with a folder of its own, gone afterwards.</summary>
    public static void InFolder(Action<string> act)
    {
        var folder = Directory.CreateTempSubdirectory("framing-fits-").FullName;
        try
        {
            act(folder);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>The bytes of a FITS file with the given cards and data.</summary>
    public static byte[] FitsBytes(IEnumerable<string> cards, byte[] data)
    {
        var header = string.Concat(cards.Append("END").Select(card => card.PadRight(80)));
        header = header.PadRight((header.Length + 2879) / 2880 * 2880);
        return [.. System.Text.Encoding.Latin1.GetBytes(header), .. data];
    }
}
