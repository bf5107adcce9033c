using System.Globalization;
using System.Security.Cryptography;
using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Benchmarks;

/// <summary>Areas, gaps and overlaps: rectangles beside Shapely's union; mosaics of a hemisphere by themselves.</summary>
internal static class CoverageTopic
{
    private const int Runs = 5;

    /// <summary>The rectangles lie in a tangent plane; a unit of theirs is as many radians at its middle.</summary>
    private const double Scale = 0.01;

    public static int Run(string[] arguments)
    {
        if (arguments is not ["sphere"])
        {
            Rectangles();
        }

        foreach (var panels in new[] { 100, 1000, 10_000 })
        {
            HemisphereRun.Measure(panels, Runs);
        }

        return 0;
    }

    private static void Rectangles()
    {
        var folder = Directory.CreateTempSubdirectory("rectangles-").FullName;
        try
        {
            Beside(folder, "rects100", RectangleInputs.Strewn(100, 4001));
            Beside(folder, "mosaic100", RectangleInputs.Grid(6001));
            Beside(folder, "rects10000", RectangleInputs.Strewn(10_000, 5001));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void Beside(string folder, string name, IReadOnlyList<PlaneRectangle> made)
    {
        var path = Path.Combine(folder, name + ".csv");
        RectangleInputs.Write(path, made);
        var start = Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(path)))[..16];
        Console.WriteLine($"{name} (SHA-256 starts {start})");

        // Ours reads the file too, so that both have the same digits.
        var rectangles = RectangleInputs.Read(path);
        var rival = Rival.Run(
            "union.py",
            path,
            Runs.ToString(CultureInfo.InvariantCulture),
            Scale.ToString(CultureInfo.InvariantCulture)
        );
        var (building, figures) = Stopwatches.Time(
            "  building",
            Runs,
            () => RectangleInputs.OnTheSphere(rectangles, Scale)
        );
        var (area, union) = Stopwatches.Time(
            "  area by depth, overlaps, border",
            Runs,
            () => new PanelUnion(figures, new(0.0, 0.0, 1.0))
        );
        var (gaps, holes) = Stopwatches.Time(
            "  enclosed gaps",
            Runs,
            () => new BareSky(union).Holes
        );
        Stopwatches.Ratio("  area, overlaps and gaps; rival: union", area + gaps, rival["union"]);
        Stopwatches.Ratio(
            "  with building, both",
            building + area + gaps,
            rival["union"] + rival["building"]
        );
        Difference("  area on the sphere", union.AtLeast[0], rival["sphere"]);
        Difference("  area in the plane", InThePlane(union), rival["area"]);
        Difference(
            "  gaps in the plane",
            holes.Sum(hole => InThePlane(hole.Outer) + hole.Holes.Sum(InThePlane)),
            rival["enclosed"]
        );
        Console.WriteLine(
            FormattableString.Invariant(
                $"  covered by 1, 2, 3… : {string.Join(", ", union.AtLeast.Take(5).Select(a => FormattableString.Invariant($"{a / Scale / Scale:0.000}")))}…; {holes.Count} gaps"
            )
        );
    }

    private static void Difference(string label, double ours, double rival) =>
        Console.WriteLine(
            FormattableString.Invariant(
                $"{label, -44} {ours:0.000000000000}, relative difference {Math.Abs(ours - rival) / Math.Max(rival, 1e-300):0.0e+00}"
            )
        );

    /// <summary>The same border summed in the plane.</summary>
    private static double InThePlane(PanelUnion union) =>
        union.Border.Sum(arc => Twice(arc.From, arc.To)) / 2.0 / Scale / Scale;

    private static double InThePlane(IReadOnlyList<SkyDirection> ring) =>
        ring.Select((from, i) => Twice(from.Vector, ring[(i + 1) % ring.Count].Vector)).Sum()
        / 2.0
        / Scale
        / Scale;

    private static double Twice(Vector3D from, Vector3D to) =>
        ((from.X * to.Y) - (from.Y * to.X)) / (from.Z * to.Z);
}
