using System.Globalization;
using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Benchmarks;

/// <summary>Rectangles of 1.5 x 1.0 in a plane, made the same on every machine.</summary>
internal static class RectangleInputs
{
    /// <summary>Rectangles at random places and angles, each place covered about twice.</summary>
    /// <param name="count">How many.</param>
    /// <param name="seed">Seed of the first of three streams: places across, places up, angles.</param>
    public static IReadOnlyList<PlaneRectangle> Strewn(int count, ulong seed)
    {
        var side = Math.Sqrt(count * 1.5 / 2.0);
        return
        [
            .. Enumerable
                .Range(0, count)
                .Select(i => new PlaneRectangle(
                    SplitMix.Uniform(seed, (ulong)i) * side,
                    SplitMix.Uniform(seed + 1, (ulong)i) * side,
                    SplitMix.Uniform(seed + 2, (ulong)i) * 180.0
                )),
        ];
    }

    /// <summary>A grid of 10 x 10 that shares 15 %, with small errors of place and angle.</summary>
    public static IReadOnlyList<PlaneRectangle> Grid(ulong seed) =>
        [
            .. Enumerable
                .Range(0, 100)
                .Select(i => new PlaneRectangle(
                    (i % 10 * 1.5 * 0.85) + (0.06 * (SplitMix.Uniform(seed, (ulong)i) - 0.5)),
                    (i / 10 * 1.0 * 0.85) + (0.06 * (SplitMix.Uniform(seed + 1, (ulong)i) - 0.5)),
                    2.0 * (SplitMix.Uniform(seed + 2, (ulong)i) - 0.5)
                )),
        ];

    /// <summary>Writes them with nine digits, which is what ours and the rival read.</summary>
    public static void Write(string path, IReadOnlyList<PlaneRectangle> rectangles) =>
        File.WriteAllText(
            path,
            "cx,cy,w,h,angle_deg\n"
                + string.Concat(
                    rectangles.Select(r =>
                        FormattableString.Invariant(
                            $"{r.X:F9},{r.Y:F9},1.5,1.0,{r.AngleDegrees:F9}\n"
                        )
                    )
                )
        );

    /// <summary>Reads them back.</summary>
    public static IReadOnlyList<PlaneRectangle> Read(string path) =>
        [
            .. File.ReadLines(path)
                .Skip(1)
                .Select(line =>
                    line.Split(',')
                        .Select(field => double.Parse(field, CultureInfo.InvariantCulture))
                        .ToArray()
                )
                .Select(row => new PlaneRectangle(row[0], row[1], row[4])),
        ];

    /// <summary>Lays them into the plane that touches the sphere at the middle of their middles' box.</summary>
    /// <param name="rectangles">The rectangles.</param>
    /// <param name="scale">Radians to one of their units, at the middle.</param>
    public static ConvexFigures OnTheSphere(IReadOnlyList<PlaneRectangle> rectangles, double scale)
    {
        double x = (rectangles.Min(r => r.X) + rectangles.Max(r => r.X)) / 2.0,
            y = (rectangles.Min(r => r.Y) + rectangles.Max(r => r.Y)) / 2.0;
        var figures = new ConvexFigures();
        Span<Vector3D> ring = stackalloc Vector3D[4];
        foreach (var r in rectangles)
        {
            var (sin, cos) = Math.SinCos(r.AngleDegrees * Math.PI / 180.0);
            ring[0] = Corner(-0.75, -0.5);
            ring[1] = Corner(0.75, -0.5);
            ring[2] = Corner(0.75, 0.5);
            ring[3] = Corner(-0.75, 0.5);
            figures.Add(ring, 0.0);

            Vector3D Corner(double u, double v)
            {
                var at = new Vector3D(
                    scale * (r.X - x + (u * cos) - (v * sin)),
                    scale * (r.Y - y + (u * sin) + (v * cos)),
                    1.0
                );
                return at * (1.0 / at.Length);
            }
        }

        return figures;
    }
}
