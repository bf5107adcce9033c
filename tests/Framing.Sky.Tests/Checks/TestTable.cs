using System.Globalization;
using System.IO.Compression;

namespace Framing.Sky.Tests;

/// <summary>A table of comma-separated values in the Data folder, plain or packed (.gz).</summary>
internal static class TestTable
{
    /// <summary>The rows as texts; the header must read as given.</summary>
    public static IReadOnlyList<string[]> Rows(string name, string header)
    {
        using var file = TestData.Stream(name);
        using var unpacked = name.EndsWith(".gz", StringComparison.Ordinal)
            ? new GZipStream(file, CompressionMode.Decompress)
            : file;
        using var reader = new StreamReader(unpacked);
        Assert.Equal(header, reader.ReadLine());
        var rows = new List<string[]>();
        while (reader.ReadLine() is { } line)
        {
            rows.Add(line.Split(','));
        }

        return rows;
    }

    /// <summary>The rows as numbers.</summary>
    public static IReadOnlyList<double[]> Numbers(string name, string header) =>
        [
            .. Rows(name, header)
                .Select(row =>
                    row.Select(text => double.Parse(text, CultureInfo.InvariantCulture)).ToArray()
                ),
        ];
}
