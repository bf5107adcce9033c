using System.Runtime.CompilerServices;

namespace Framing.Solving;

/// <summary>The stars found in a frame, brightest first, places counted from the middle of the frame.</summary>
internal sealed class DetectionField
{
    private readonly int columns;
    private readonly int rows;
    private readonly double cell;
    private readonly int[] starts;
    private readonly int[] members;

    public DetectionField(IReadOnlyList<DetectedStar> detections, int width, int height)
    {
        (Width, Height) = (width, height);
        Order =
        [
            .. Enumerable
                .Range(0, detections.Count)
                .Where(star =>
                    double.IsFinite(detections[star].Position.X)
                    && double.IsFinite(detections[star].Position.Y)
                    && !double.IsNaN(detections[star].Flux)
                )
                .OrderByDescending(star => detections[star].Flux),
        ];
        U = Array.ConvertAll(Order, star => detections[star].Position.X - (0.5 * (width + 1)));
        V = Array.ConvertAll(Order, star => detections[star].Position.Y - (0.5 * (height + 1)));
        Size = Math.Sqrt((double)width * height);
        cell = Math.Max(4.0, Size / 40.0);
        columns = (int)(width / cell) + 1;
        rows = (int)(height / cell) + 1;
        starts = new int[(columns * rows) + 1];
        members = new int[Count];
        foreach (var star in Enumerable.Range(0, Count))
        {
            starts[Cell(U[star], V[star]) + 1]++;
        }

        for (var i = 1; i < starts.Length; i++)
        {
            starts[i] += starts[i - 1];
        }

        var next = starts.AsSpan(0, starts.Length - 1).ToArray();
        for (var star = 0; star < Count; star++)
        {
            members[next[Cell(U[star], V[star])]++] = star;
        }
    }

    public int Width { get; }

    public int Height { get; }

    /// <summary>The side of the square of the frame's area, in pixels.</summary>
    public double Size { get; }

    public int Count => Order.Length;

    /// <summary>Which entry of the given list each star is.</summary>
    public int[] Order { get; }

    public double[] U { get; }

    public double[] V { get; }

    /// <summary>True inside the frame.</summary>
    public bool Contains(double u, double v) =>
        Math.Abs(u) <= 0.5 * Width && Math.Abs(v) <= 0.5 * Height;

    /// <summary>The nearest of the brightest stars within a distance; -1 if there is none.</summary>
    /// <param name="u">The place.</param>
    /// <param name="v">The place.</param>
    /// <param name="radius">The distance, pixels.</param>
    /// <param name="brightest">How many of the stars count.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public int Nearest(double u, double v, double radius, int brightest)
    {
        var best = -1;
        var least = radius * radius;
        for (var row = Row(v - radius); row <= Row(v + radius); row++)
        {
            for (var column = Column(u - radius); column <= Column(u + radius); column++)
            {
                var number = (row * columns) + column;
                for (var i = starts[number]; i < starts[number + 1]; i++)
                {
                    var star = members[i];
                    if (star >= brightest)
                    {
                        break;
                    }

                    double du = U[star] - u,
                        dv = V[star] - v;
                    var distance = (du * du) + (dv * dv);
                    if (distance <= least)
                    {
                        (least, best) = (distance, star);
                    }
                }
            }
        }

        return best;
    }

    /// <summary>How many of the brightest stars lie within a distance.</summary>
    /// <param name="u">The place.</param>
    /// <param name="v">The place.</param>
    /// <param name="radius">The distance, pixels.</param>
    /// <param name="brightest">How many of the stars count.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public int CountWithin(double u, double v, double radius, int brightest)
    {
        var count = 0;
        for (var row = Row(v - radius); row <= Row(v + radius); row++)
        {
            for (var column = Column(u - radius); column <= Column(u + radius); column++)
            {
                var number = (row * columns) + column;
                for (var i = starts[number]; i < starts[number + 1]; i++)
                {
                    var star = members[i];
                    if (star >= brightest)
                    {
                        break;
                    }

                    double du = U[star] - u,
                        dv = V[star] - v;
                    count += (du * du) + (dv * dv) <= radius * radius ? 1 : 0;
                }
            }
        }

        return count;
    }

    private int Cell(double u, double v) => (Row(v) * columns) + Column(u);

    private int Column(double u) => Math.Clamp((int)((u + (0.5 * Width)) / cell), 0, columns - 1);

    private int Row(double v) => Math.Clamp((int)((v + (0.5 * Height)) / cell), 0, rows - 1);
}
