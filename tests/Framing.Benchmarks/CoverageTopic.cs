using System.Security.Cryptography;

namespace Framing.Benchmarks;

/// <summary>Areas, gaps and overlaps: rectangles beside Shapely's union.</summary>
internal static class CoverageTopic
{
    private const int Runs = 5;

    public static int Run(string[] arguments)
    {
        var folder = Directory.CreateTempSubdirectory("rectangles-").FullName;
        try
        {
            foreach (
                var (name, rectangles) in new[]
                {
                    ("rects100", RectangleInputs.Strewn(100, 4001)),
                    ("mosaic100", RectangleInputs.Grid(6001)),
                    ("rects10000", RectangleInputs.Strewn(10_000, 5001)),
                }
            )
            {
                var path = Path.Combine(folder, name + ".csv");
                RectangleInputs.Write(path, rectangles);
                var start = Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(path)))[
                    ..16
                ];
                Console.WriteLine($"{name} (SHA-256 starts {start})");
                Rival.Run(
                    "union.py",
                    path,
                    Runs.ToString(System.Globalization.CultureInfo.InvariantCulture)
                );
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        return 0;
    }
}
