using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Framing.Sky;

namespace Framing.Solving;

/// <summary>Tells right guesses from wrong ones by the stars that a guess was not made from.</summary>
internal sealed class Verifier(DetectionField field, ReferenceStars stars, SearchLimits limits)
{
    /// <summary>The largest bound on the chance of a false match that is accepted.</summary>
    public const double LargestChance = 1e-7;

    // Stars of the quick look, in the frame and in the catalogue's part of the sky.
    private const int QuickDetections = 100;
    private const int QuickStars = 60;
    private const double QuickLog = -6.5;
    private const int Rounds = 6;
    private const int LeastForCube = 9;

    // The four stars of the guess, and two more for the three numbers that the fit has beyond a similarity.
    private const int NoEvidence = 6;

    // A bound holds for all guesses of a search together if each has its share of it and the shares add up to 1. The guess
    // of number g has 1 / (10 max(g, 100)); the sum reaches 1 after 800,000 guesses, and a search makes some thousands.
    private const int LeastGuesses = 100;
    private const double Shares = 10.0;

    private static readonly double[] Radii = [0.75, 1.5, 3.0, 6.0];
    private static readonly int[] Depths = [30, 100, 400];

    private readonly double half = 0.5 * double.Hypot(field.Width, field.Height);
    private readonly StarBuffer near = new();
    private readonly List<Vector3D> directions = [];
    private readonly List<double> us = [];
    private readonly List<double> vs = [];
    private readonly int[] takenBy = new int[field.Count];
    private readonly double[] takenAt = new double[field.Count];

    /// <summary>Looks at one guess.</summary>
    /// <param name="quad">Four catalogue stars.</param>
    /// <param name="seen">The stars of the frame that they are taken for.</param>
    /// <param name="mirrored">The parity.</param>
    /// <param name="guesses">How many guesses there were so far.</param>
    /// <returns>Null unless it is certain.</returns>
    public Finding? Verify(
        ReadOnlySpan<Vector3D> quad,
        ReadOnlySpan<int> seen,
        bool mirrored,
        int guesses
    )
    {
        Span<double> u = stackalloc double[4];
        Span<double> v = stackalloc double[4];
        for (var i = 0; i < 4; i++)
        {
            (u[i], v[i]) = (field.U[seen[i]], field.V[seen[i]]);
        }

        var map = PlaneMap.At(quad[0] + quad[1] + quad[2] + quad[3]);
        map.FitSimilar(quad, u, v, mirrored);
        if (!limits.Allows(map.Scale))
        {
            return null;
        }

        var middle = map.Middle();
        if (!limits.Allows(middle) || middle.Dot(quad[0]) < 0.5)
        {
            return null;
        }

        map = PlaneMap.At(middle);
        var rms = map.FitSimilar(quad, u, v, mirrored);
        var radius = 3.0 + (0.004 * field.Size) + rms;
        return IsPromising(map, radius) && Refine(ref map, radius) ? Judged(map, guesses) : null;
    }

    /// <summary>A quick look at the brightest stars.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private bool IsPromising(PlaneMap map, double radius)
    {
        var detections = Math.Min(field.Count, QuickDetections);
        Gather(map, Depth(map, QuickStars), out var depth);
        int tested = 0,
            hits = 0,
            close = 0;
        var closeRadius = 0.25 * radius;
        foreach (var star in near.Items)
        {
            if (
                star < depth
                && map.TryPlace(stars.Vectors[star], out var u, out var v)
                && field.Contains(u, v)
            )
            {
                tested++;
                var detection = field.Nearest(u, v, radius, detections);
                if (detection >= 0)
                {
                    hits++;
                    close +=
                        double.Hypot(field.U[detection] - u, field.V[detection] - v) < closeRadius
                            ? 1
                            : 0;
                }
            }
        }

        return IsRare(hits, radius) || IsRare(close, closeRadius);

        bool IsRare(int count, double within) =>
            ChanceModel.LogTail(count - 4, tested * Chance(detections, within)) < QuickLog;
    }

    /// <summary>Fits the map to all stars that fall on detections, with a radius that shrinks as the fit improves.</summary>
    private bool Refine(ref PlaneMap map, double radius)
    {
        var detections = Math.Min(field.Count, Depths[^1]);
        for (var round = 0; round < Rounds; round++)
        {
            Pair(map, radius, detections, QuickStars * (round < 2 ? 1 : 3));
            if (directions.Count < 6)
            {
                return false;
            }

            var span = CollectionsMarshal.AsSpan(directions);
            var u = CollectionsMarshal.AsSpan(us);
            var v = CollectionsMarshal.AsSpan(vs);
            var bent = round >= 2 && directions.Count >= LeastForCube;
            if (!map.TryFit(span, u, v, half, bent: false))
            {
                return false;
            }

            var moved = PlaneMap.At(map.Middle());
            moved.FitSimilar(span, u, v, map.IsMirrored);
            if (!moved.TryFit(span, u, v, half, bent) || !(moved.Strain < 0.05))
            {
                return false;
            }

            map = moved;
            radius = Math.Clamp(4.0 * Rms(map), 1.5, radius);
        }

        return limits.Allows(map.Scale) && limits.Allows(map.Middle());
    }

    private double Rms(PlaneMap map)
    {
        var sum = 0.0;
        for (var i = 0; i < directions.Count; i++)
        {
            map.TryPlace(directions[i], out var u, out var v);
            sum += ((u - us[i]) * (u - us[i])) + ((v - vs[i]) * (v - vs[i]));
        }

        return Math.Sqrt(sum / (2.0 * directions.Count));
    }

    /// <summary>Pairs catalogue stars with the nearest detections, each detection with its nearest star.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Pair(PlaneMap map, double radius, int detections, int wanted)
    {
        takenBy.AsSpan().Fill(-1);
        Gather(map, Depth(map, wanted), out var depth);
        foreach (var star in near.Items)
        {
            if (
                star >= depth
                || !map.TryPlace(stars.Vectors[star], out var u, out var v)
                || !field.Contains(u, v)
            )
            {
                continue;
            }

            var detection = field.Nearest(u, v, radius, detections);
            if (detection < 0)
            {
                continue;
            }

            var distance = double.Hypot(field.U[detection] - u, field.V[detection] - v);
            if (takenBy[detection] < 0 || distance < takenAt[detection])
            {
                (takenBy[detection], takenAt[detection]) = (star, distance);
            }
        }

        directions.Clear();
        us.Clear();
        vs.Clear();
        for (var detection = 0; detection < detections; detection++)
        {
            if (takenBy[detection] >= 0)
            {
                directions.Add(stars.Vectors[takenBy[detection]]);
                us.Add(field.U[detection]);
                vs.Add(field.V[detection]);
            }
        }
    }

    /// <summary>The bound on the chance of a false match, taken at the depth and radius where it is least.</summary>
    private Finding? Judged(PlaneMap map, int guesses)
    {
        var least = 0.0;
        foreach (var option in Depths)
        {
            var detections = Math.Min(field.Count, option);
            Gather(map, Depth(map, (int)(1.3 * detections) + 10), out var depth);
            foreach (var radius in Radii)
            {
                least = Math.Min(least, LogTail(map, depth, detections, radius));
            }

            if (field.Count <= option)
            {
                break;
            }
        }

        var chance = Math.Exp(
            Math.Min(
                0.0,
                least
                    + Math.Log(Radii.Length * Depths.Length)
                    + Math.Log(Shares * Math.Max(guesses, LeastGuesses))
            )
        );
        // A chance of nothing is no bound; this is where numbers end.
        chance = Math.Max(chance, 1e-300);
        return chance <= LargestChance ? new(map, chance, Rms(map)) : null;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double LogTail(PlaneMap map, int depth, int detections, double radius)
    {
        takenBy.AsSpan().Fill(-1);
        var around = 0.08 * field.Size;
        var hits = 0;
        var expected = 0.0;
        foreach (var star in near.Items)
        {
            if (
                star >= depth
                || !map.TryPlace(stars.Vectors[star], out var u, out var v)
                || !field.Contains(u, v)
            )
            {
                continue;
            }

            var here = field.CountWithin(u, v, around, detections);
            expected += Math.Min(
                1.0,
                Math.Max(Chance(detections, radius), here * radius * radius / (around * around))
            );
            var detection = field.Nearest(u, v, radius, detections);
            if (detection >= 0 && takenBy[detection] < 0)
            {
                takenBy[detection] = star;
                hits++;
            }
        }

        return ChanceModel.LogTail(hits - NoEvidence, expected);
    }

    private double Chance(int detections, double radius) =>
        Math.Min(1.0, detections * Math.PI * radius * radius / (field.Size * field.Size));

    /// <summary>How many of the brightest stars of the sky put so many into the frame, in the mean.</summary>
    private int Depth(PlaneMap map, int wanted)
    {
        var side = field.Size * map.Scale;
        return (int)Math.Min(stars.Count, wanted * stars.Levels.Steradians / (side * side));
    }

    private void Gather(PlaneMap map, int wanted, out int depth)
    {
        depth = wanted;
        near.Clear();
        var middle = SkyDirection.FromVector(map.Middle());
        stars
            .Levels.OfBrightest(wanted)
            .Gather(
                middle.RightAscension.Radians,
                middle.Declination.Radians,
                Math.Atan(0.5 * double.Hypot(field.Width, field.Height) * map.Scale),
                near
            );
    }
}
