using System.Numerics;
using System.Runtime.InteropServices;

namespace Framing.Sky;

/// <summary>Maps many points block by block, several lanes at a time.</summary>
/// <remarks>
/// A block is small enough to stay in the nearest cache through every step. The last one is filled up, so that a point has
/// the same answer wherever in a batch it stands. What comes back as NaN is in doubt, and is asked for alone: so that the
/// answers to failures are those of the single calls.
/// </remarks>
internal static class PointBatches
{
    /// <summary>Points in a block.</summary>
    private const int Block = 256;

    /// <summary>The directions of many places: see <see cref="WorldCoordinates"/>.</summary>
    public static int PixelToSky(
        WorldCoordinates world,
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        Span<double> rightAscension,
        Span<double> declination,
        Span<MapFailure> failures
    )
    {
        var lanes = LanesFor(x.Length);
        Span<Vector<double>> first = stackalloc Vector<double>[lanes];
        Span<Vector<double>> second = stackalloc Vector<double>[lanes];
        Span<Vector<double>> third = stackalloc Vector<double>[lanes];
        failures.Clear();
        var failed = 0;
        for (var start = 0; start < x.Length; start += Block)
        {
            var count = Math.Min(Block, x.Length - start);
            var used = Fill(first, x.Slice(start, count));
            Fill(second, y.Slice(start, count));
            world.PixelsToVectors(first[..used], second[..used], third[..used]);
            var all = SphereLanes.ToDegrees(first[..used], second[..used], third[..used]);
            var ra = rightAscension.Slice(start, count);
            var dec = declination.Slice(start, count);
            Singles(first)[..count].CopyTo(ra);
            Singles(second)[..count].CopyTo(dec);
            if (all)
            {
                continue;
            }

            for (var i = 0; i < count; i++)
            {
                if (double.IsNaN(ra[i]))
                {
                    var pixel = new PixelPosition(x[start + i], y[start + i]);
                    failures[start + i] = world.PixelToSky(pixel, out var direction);
                    var found = failures[start + i] == MapFailure.None;
                    (ra[i], dec[i]) = found
                        ? (direction.RightAscension.Degrees, direction.Declination.Degrees)
                        : (double.NaN, double.NaN);
                    failed += found ? 0 : 1;
                }
            }
        }

        return failed;
    }

    /// <summary>The places of many directions: see <see cref="WorldCoordinates"/>.</summary>
    public static int SkyToPixel(
        WorldCoordinates world,
        ReadOnlySpan<double> rightAscension,
        ReadOnlySpan<double> declination,
        Span<double> x,
        Span<double> y,
        Span<MapFailure> failures
    )
    {
        var lanes = LanesFor(x.Length);
        Span<Vector<double>> first = stackalloc Vector<double>[lanes];
        Span<Vector<double>> second = stackalloc Vector<double>[lanes];
        Span<Vector<double>> third = stackalloc Vector<double>[lanes];
        failures.Clear();
        var failed = 0;
        for (var start = 0; start < x.Length; start += Block)
        {
            var count = Math.Min(Block, x.Length - start);
            var used = Fill(first, rightAscension.Slice(start, count));
            Fill(second, declination.Slice(start, count));
            SphereLanes.FromDegrees(first[..used], second[..used], third[..used]);
            world.VectorsToPixels(first[..used], second[..used], third[..used]);
            var blockX = x.Slice(start, count);
            var blockY = y.Slice(start, count);
            Singles(first)[..count].CopyTo(blockX);
            Singles(second)[..count].CopyTo(blockY);
            if (AllSound(first[..used], second[..used]))
            {
                continue;
            }

            for (var i = 0; i < count; i++)
            {
                if (!double.IsFinite(blockX[i] + blockY[i]))
                {
                    failures[start + i] = Single(
                        world,
                        rightAscension[start + i],
                        declination[start + i],
                        out var pixel
                    );
                    var found = failures[start + i] == MapFailure.None;
                    (blockX[i], blockY[i]) = found ? (pixel.X, pixel.Y) : (double.NaN, double.NaN);
                    failed += found ? 0 : 1;
                }
            }
        }

        return failed;
    }

    /// <summary>Where in another picture the same sky appears: see <see cref="WorldCoordinates"/>.</summary>
    public static int PixelToPixel(
        WorldCoordinates world,
        WorldCoordinates other,
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        Span<double> otherX,
        Span<double> otherY
    )
    {
        var lanes = LanesFor(x.Length);
        Span<Vector<double>> first = stackalloc Vector<double>[lanes];
        Span<Vector<double>> second = stackalloc Vector<double>[lanes];
        Span<Vector<double>> third = stackalloc Vector<double>[lanes];
        var failed = 0;
        for (var start = 0; start < x.Length; start += Block)
        {
            var count = Math.Min(Block, x.Length - start);
            var used = Fill(first, x.Slice(start, count));
            Fill(second, y.Slice(start, count));
            world.PixelsToVectors(first[..used], second[..used], third[..used]);
            SphereLanes.Unit(first[..used], second[..used], third[..used]);
            other.VectorsToPixels(first[..used], second[..used], third[..used]);
            var blockX = otherX.Slice(start, count);
            var blockY = otherY.Slice(start, count);
            Singles(first)[..count].CopyTo(blockX);
            Singles(second)[..count].CopyTo(blockY);
            if (AllSound(first[..used], second[..used]))
            {
                continue;
            }

            for (var i = 0; i < count; i++)
            {
                if (!double.IsFinite(blockX[i] + blockY[i]))
                {
                    var pixel = default(PixelPosition);
                    var found =
                        world.TryPixelToSky(new(x[start + i], y[start + i]), out var direction)
                        && other.TrySkyToPixel(direction, out pixel);
                    (blockX[i], blockY[i]) = found ? (pixel.X, pixel.Y) : (double.NaN, double.NaN);
                    failed += found ? 0 : 1;
                }
            }
        }

        return failed;
    }

    /// <summary>The numbers in lanes, one by one.</summary>
    public static Span<double> Singles(Span<Vector<double>> lanes) =>
        MemoryMarshal.Cast<Vector<double>, double>(lanes);

    private static MapFailure Single(
        WorldCoordinates world,
        double rightAscension,
        double declination,
        out PixelPosition pixel
    )
    {
        pixel = default;
        return double.IsFinite(rightAscension) && Math.Abs(declination) <= 90.0
            ? world.SkyToPixel(SkyDirection.FromDegrees(rightAscension, declination), out pixel)
            : MapFailure.OffTheMap;
    }

    private static int LanesFor(int points) =>
        (Math.Min(points, Block) + Vector<double>.Count - 1) / Vector<double>.Count;

    /// <summary>Takes numbers into lanes; the last ones are filled up with the last number.</summary>
    private static int Fill(Span<Vector<double>> lanes, ReadOnlySpan<double> numbers)
    {
        var used = LanesFor(numbers.Length);
        var single = Singles(lanes[..used]);
        numbers.CopyTo(single);
        single[numbers.Length..].Fill(numbers[^1]);
        return used;
    }

    private static bool AllSound(ReadOnlySpan<Vector<double>> x, ReadOnlySpan<Vector<double>> y)
    {
        var good = Vector<long>.AllBitsSet;
        for (var i = 0; i < x.Length; i++)
        {
            var sum = x[i] + y[i];
            good &= Vector.Equals(sum - sum, Vector<double>.Zero);
        }

        return good == Vector<long>.AllBitsSet;
    }
}
