using System.Globalization;
using System.Reflection;
using System.Text.Json;

namespace Framing.Mosaics.Tests;

/// <summary>Reads the committed check values, which travel inside the test program; their sources stand beside them in the files.</summary>
internal static class CheckValues
{
    private static readonly JsonElement Entries = Read("checks.json");

    private static readonly JsonElement Tables = Read("tables.json");

    public static IReadOnlyList<JsonElement> Starting(string prefix) =>
        [
            .. Entries
                .EnumerateArray()
                .Where(entry => Id(entry).StartsWith(prefix, StringComparison.Ordinal)),
        ];

    public static JsonElement One(string id) =>
        Entries.EnumerateArray().Single(entry => Id(entry) == id);

    public static string Id(JsonElement entry) => entry.GetProperty("id").GetString()!;

    public static double Input(this JsonElement entry, string name) =>
        entry.GetProperty("inputs").GetProperty(name).GetDouble();

    public static double Expected(this JsonElement entry, string name) =>
        entry.GetProperty("expect").GetProperty(name).GetDouble();

    public static double Tolerance(this JsonElement entry, string name)
    {
        var tolerance = entry.GetProperty("tolerance");
        return tolerance.ValueKind == JsonValueKind.Number
            ? tolerance.GetDouble()
            : tolerance.GetProperty(name).GetDouble();
    }

    /// <summary>The value lies within the entry's own tolerance.</summary>
    public static void Meets(this JsonElement entry, string name, double value)
    {
        var expected = entry.Expected(name);
        Assert.True(
            Math.Abs(value - expected) <= entry.Tolerance(name),
            string.Create(
                CultureInfo.InvariantCulture,
                $"{Id(entry)}: {name} is {value:R}, expected {expected:R}"
            )
        );
    }

    /// <summary>The cells of a table of the reference run, row by row, header left out.</summary>
    public static IReadOnlyList<string[]> Table(string name) =>
        [
            .. Tables
                .GetProperty(name)
                .GetString()!
                .Split('\n')
                .Skip(2)
                .Select(line =>
                    line.Trim('|', ' ').Split('|').Select(cell => cell.Trim()).ToArray()
                ),
        ];

    public static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);

    private static JsonElement Read(string name)
    {
        using var file =
            Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
            ?? throw new FileNotFoundException($"The Data folder holds no {name}.");
        return JsonDocument.Parse(file).RootElement.Clone();
    }
}
