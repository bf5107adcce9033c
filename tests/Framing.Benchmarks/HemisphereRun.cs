using System.Diagnostics;
using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Benchmarks;

/// <summary>A mosaic of a whole hemisphere, in rings about its middle, and the full report on its coverage.</summary>
internal static class HemisphereRun
{
    private const double Share = 0.1;

    /// <summary>Measures one.</summary>
    /// <param name="wanted">About how many panels it shall have.</param>
    /// <param name="runs">How often it is timed.</param>
    public static void Measure(int wanted, int runs)
    {
        var middle = SkyDirection.FromDegrees(40.0, 65.0);
        var (field, panels, pairs) = Rings(middle, wanted);
        var target = SkyOutline.Ellipse(
            middle,
            Angle.FromDegrees(119.0),
            Angle.FromDegrees(119.0),
            PositionAngle.North
        );
        var before = GC.GetTotalAllocatedBytes(precise: true);
        CoverageMeasure.Of(panels, pairs, field, mirrored: false, middle, target);
        var taken = GC.GetTotalAllocatedBytes(precise: true) - before;
        var (_, coverage) = Stopwatches.Time(
            FormattableString.Invariant($"hemisphere of {panels.Count} panels, full report"),
            runs,
            () => CoverageMeasure.Of(panels, pairs, field, mirrored: false, middle, target)
        );
        using var process = Process.GetCurrentProcess();
        Console.WriteLine(
            FormattableString.Invariant(
                $"  area {coverage.Area.SquareDegrees:0.000} square degrees, {coverage.Gaps.Count} gaps, target covered {coverage.TargetCoveredFraction:0.000000}, least overlap {coverage.LeastOverlap?.Arcminutes:0.00}′; allocated {taken / 1048576.0:0} MB in one report, peak of the whole process {process.PeakWorkingSet64 / 1048576.0:0} MB"
            )
        );
    }

    /// <summary>Rings about the middle, out to a quarter of the sky, the camera turned so that up is inward.</summary>
    private static (FieldShape Field, List<Panel> Panels, List<PanelPair> Pairs) Rings(
        SkyDirection middle,
        int wanted
    )
    {
        // A hemisphere is 2π steradians; the sharing and the odd ends of rings take their part.
        var area = Math.Tau / wanted * (1.0 + Share) * (1.0 + Share) * 1.03;
        var height = Math.Sqrt(area / 1.5);
        var field = new FieldShape(2.0 * Math.Tan(0.75 * height), 2.0 * Math.Tan(0.5 * height));
        List<Panel> panels = [];
        List<PanelPair> pairs = [];
        var step = height / (1.0 + Share);
        (int First, int Count) inner = default;
        for (var ring = 0; ring * step < Math.PI / 2.0; ring++)
        {
            var distance = ring * step;
            var rim = Math.Min(distance + (height / 2.0), Math.PI / 2.0);
            var count =
                ring == 0
                    ? 1
                    : (int)
                        Math.Ceiling(
                            Math.Tau * Math.Sin(rim) * (1.0 + Share) / field.Width.Radians
                        );
            var first = panels.Count;
            for (var i = 0; i < count; i++)
            {
                var outward = PositionAngle.FromDegrees(360.0 * i / count);
                var centre = middle.Offset(outward, Angle.FromRadians(distance));
                var pose = new CameraPose(
                    centre,
                    ring == 0 ? PositionAngle.North : centre.PositionAngleTo(middle)
                );
                panels.Add(
                    new(
                        panels.Count + 1,
                        i + 1,
                        ring + 1,
                        pose,
                        field.Corners(pose, mirrored: false)
                    )
                );
                if (count > 1)
                {
                    // Seen with up inward, the next one (north through east) lies to the right.
                    pairs.Add(new(first + i, first + ((i + 1) % count), true));
                }

                if (inner.Count > 1)
                {
                    var above = (int)Math.Round((double)i * inner.Count / count) % inner.Count;
                    pairs.Add(new(inner.First + above, first + i, false));
                }
            }

            inner = (first, count);
        }

        return (field, panels, pairs);
    }
}
