using System.Globalization;
using System.IO.Compression;
using System.Reflection;
using System.Text.Json;
using Framing.Sky;

namespace Framing.Nights.Tests;

/// <summary>A row of a table in the Data folder, which travels inside the test program.</summary>
internal sealed class TestTable
{
    private readonly IReadOnlyDictionary<string, string> cells;

    private TestTable(IReadOnlyDictionary<string, string> cells) => this.cells = cells;

    public double this[string column] => double.Parse(cells[column], CultureInfo.InvariantCulture);

    public ObservingSite Site =>
        new(
            Angle.FromDegrees(this["lat_deg"]),
            Angle.FromDegrees(this["lon_deg"]),
            cells.ContainsKey("height_m") ? this["height_m"] : 0.0,
            AirConditions.Usual
        );

    public DateTime Utc => Time(cells["utc"]);

    public string Text(string column) => cells[column];

    public IReadOnlyList<DateTime> Times(string column) =>
        cells[column] == "none" ? [] : [.. cells[column].Split(' ').Select(Time)];

    public static DateTime Time(string text) =>
        DateTime.Parse(
            text,
            CultureInfo.InvariantCulture,
            DateTimeStyles.AdjustToUniversal | DateTimeStyles.AssumeUniversal
        );

    public static IReadOnlyList<TestTable> Read(string name)
    {
        using var stream = Stream(name);
        using var reader = new StreamReader(
            name.EndsWith(".gz", StringComparison.Ordinal)
                ? new GZipStream(stream, CompressionMode.Decompress)
                : stream
        );
        var lines = reader
            .ReadToEnd()
            .Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var head = lines[0].Split(',');
        return
        [
            .. lines
                .Skip(1)
                .Select(line => new TestTable(
                    head.Zip(line.Split(','))
                        .ToDictionary(
                            pair => pair.First,
                            pair => pair.Second,
                            StringComparer.Ordinal
                        )
                )),
        ];
    }

    /// <summary>The check values of a document by their ids.</summary>
    public static IReadOnlyDictionary<string, Check> Checks(string name) =>
        Json(name)
            .ToDictionary(
                entry => entry.Key,
                entry => new Check(
                    entry.Value.GetProperty("inputs"),
                    entry.Value.GetProperty("expect"),
                    entry.Value.GetProperty("tolerance")
                ),
                StringComparer.Ordinal
            );

    /// <summary>The entries of a document by their ids.</summary>
    public static IReadOnlyDictionary<string, JsonElement> Json(string name)
    {
        using var document = JsonDocument.Parse(Stream(name));
        return document
            .RootElement.EnumerateArray()
            .Select(entry => entry.Clone())
            .ToDictionary(entry => entry.GetProperty("id").GetString()!, StringComparer.Ordinal);
    }

    private static Stream Stream(string name) =>
        Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
        ?? throw new FileNotFoundException($"The Data folder holds no {name}.");
}
