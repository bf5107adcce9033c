using System.Globalization;
using System.Text.Json;
using Framing.Sky;

namespace Framing.Solving.Tests;

/// <summary>The committed check values of this room.</summary>
internal static class TestTable
{
    private static readonly Dictionary<string, JsonElement> Entries = ReadEntries();

    public static int Count => Entries.Count;

    public static JsonElement Entry(string id) => Entries[id];

    public static double Number(this JsonElement entry, string part, string name) =>
        entry.GetProperty(part).GetProperty(name).GetDouble();

    public static PixelPosition Pixel(JsonElement pair) =>
        new(pair[0].GetDouble(), pair[1].GetDouble());

    public static SkyDirection Direction(JsonElement pair) =>
        SkyDirection.FromDegrees(pair[0].GetDouble(), pair[1].GetDouble());

    /// <summary>The 60 stars of reg-tan-fit.</summary>
    public static IReadOnlyList<StarMatch> RegisterStars()
    {
        using var reader = new StreamReader(Stream("register-stars.csv"));
        return
        [
            .. reader
                .ReadToEnd()
                .Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Skip(1)
                .Select(line =>
                    Array.ConvertAll(
                        line.Split(','),
                        cell => double.Parse(cell, CultureInfo.InvariantCulture)
                    )
                )
                .Select(row => new StarMatch(
                    new(row[0], row[1]),
                    SkyDirection.FromDegrees(row[2], row[3])
                )),
        ];
    }

    public static Stream Stream(string name) =>
        typeof(TestTable).Assembly.GetManifestResourceStream(name)
        ?? throw new InvalidOperationException($"{name} is not embedded.");

    private static Dictionary<string, JsonElement> ReadEntries()
    {
        using var document = JsonDocument.Parse(Stream("registration.checks.json"));
        return document
            .RootElement.EnumerateArray()
            .ToDictionary(
                entry => entry.GetProperty("id").GetString()!,
                entry => entry.Clone(),
                StringComparer.Ordinal
            );
    }
}
