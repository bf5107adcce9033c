using System.Collections.Concurrent;
using Framing.Sky;

namespace Framing.Mosaics.Tests;

/// <summary>Exact coverage against an even sampling of the sky, over random mosaics anywhere.</summary>
public sealed class CoverageSamplingTests
{
    private const int Points = 100_000;

    [Fact]
    public void Of_RandomMosaics_AgreesWithEvenSampling() => Run(1, 200);

    [Fact]
    public void Of_TwoThousandRandomMosaics_AgreesWithEvenSampling() =>
        Run(1_000_001, LongRun.Wanted ? 2000 : 20);

    private static void Run(int seed, int cases)
    {
        var findings = new ConcurrentBag<string>();
        var (withGap, withHole, beyondHemisphere, overAPole) = (0, 0, 0, 0);
        Parallel.For(
            0,
            cases,
            new ParallelOptions { MaxDegreeOfParallelism = 2 },
            number =>
            {
                var drawn = new DrawnMosaic(seed + number);
                var coverage = drawn.Measure();
                foreach (var finding in Compare(drawn, coverage))
                {
                    findings.Add(FormattableString.Invariant($"seed {seed + number}: {finding}"));
                }

                Interlocked.Add(ref withGap, coverage.GapArea.Steradians > 0.0 ? 1 : 0);
                Interlocked.Add(ref withHole, coverage.EnclosedHoleArea.Steradians > 0.0 ? 1 : 0);
                Interlocked.Add(ref beyondHemisphere, drawn.Reach > Math.PI / 2.0 ? 1 : 0);
                Interlocked.Add(ref overAPole, drawn.HoldsAPole ? 1 : 0);
            }
        );
        Assert.True(
            findings.IsEmpty,
            string.Join('\n', findings.Order(StringComparer.Ordinal).Take(20))
        );

        // The cases are worth having: each kind is well represented.
        Assert.True(withGap > cases / 4);
        Assert.True(withHole > cases / 20);
        Assert.True(beyondHemisphere > cases / 20);
        Assert.True(overAPole > cases / 20);
    }

    /// <summary>What differs by more than five standard errors.</summary>
    private static IEnumerable<string> Compare(DrawnMosaic drawn, MosaicCoverage coverage)
    {
        var sampled = drawn.Sampled();
        var random = new Random(drawn.Seed);
        var capArea = Math.Tau * (1.0 - Math.Cos(drawn.Reach));
        var (c, e, n) = (drawn.Middle.Vector, drawn.Middle.East, drawn.Middle.North);
        var wholeSky = new Random(-1 - drawn.Seed);
        sampled.FindOutside([.. Enumerable.Range(0, 4000).Select(_ => DrawnMosaic.Ball(wholeSky))]);
        var depths = new int[drawn.Poses.Count + 1];
        var (gap, hole, inTarget, covered) = (0, 0, 0, 0);
        for (var i = 0; i < Points; i++)
        {
            // Even in the height over the cap's base, even all round: Archimedes' hat box.
            var z = 1.0 - (capArea / Math.Tau * random.NextDouble());
            var rho = Math.Sqrt(Math.Max(0.0, 1.0 - (z * z)));
            var (sin, cos) = Math.SinCos(Math.Tau * random.NextDouble());
            var at = (c * z) + (e * (rho * cos)) + (n * (rho * sin));
            var depth = sampled.Depth(at);
            depths[depth]++;
            if (drawn.InTarget(at))
            {
                inTarget++;
                covered += depth > 0 ? 1 : 0;
            }

            if (depth == 0)
            {
                var enclosed = sampled.Enclosed(at);
                hole += enclosed ? 1 : 0;
                gap += enclosed || sampled.BetweenSides(at) ? 1 : 0;
            }
        }

        return new[]
        {
            Finding("covered", Points - depths[0], coverage.Area.Steradians),
            Finding("gap", gap, coverage.GapArea.Steradians),
            Finding("enclosed", hole, coverage.EnclosedHoleArea.Steradians),
            Finding("target", inTarget, coverage.TargetArea.Steradians),
            Finding(
                "covered target",
                covered,
                coverage.TargetArea.Steradians * coverage.TargetCoveredFraction
            ),
            Finding("gaps as regions", gap, coverage.Gaps.Sum(region => region.Area.Steradians)),
        }
            .Concat(
                Enumerable
                    .Range(1, drawn.Poses.Count)
                    .Select(depth =>
                        Finding(
                            FormattableString.Invariant($"covered {depth} times"),
                            depths[depth],
                            coverage.AreaByDepth.ElementAtOrDefault(depth - 1).Steradians
                        )
                    )
            )
            .OfType<string>();

        string? Finding(string what, int count, double area)
        {
            // Of so many points at least one either way: a count is whole.
            var chance = area / capArea;
            var sigma = Math.Sqrt(Math.Max(1.0, Points * chance * (1.0 - chance)));
            return Math.Abs(count - (Points * chance)) <= 5.0 * sigma
                ? null
                : FormattableString.Invariant(
                    $"{what}: {count} points of {Points}, {Points * chance:0.0} expected ± {sigma:0.0}"
                );
        }
    }
}
