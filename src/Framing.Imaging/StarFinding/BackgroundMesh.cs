using System.Runtime.CompilerServices;

namespace Framing.Imaging;

/// <summary>Background and noise of a plane in cells about 64 pixels wide, with smooth curves through their middles.</summary>
internal sealed class BackgroundMesh
{
    private const int CellPx = 64;
    private const int LeastSamples = 24;

    /// <summary>Farther than a star is wide: what differs more there than between neighbours is structure.</summary>
    private const int NearBendPx = 6;

    /// <summary>As far as the mesh cannot follow: what bends within that is noise to the search for stars.</summary>
    private const int FarBendPx = 20;

    private readonly int width;
    private readonly int height;
    private readonly int columns;
    private readonly int rows;
    private readonly float[] levels;
    private readonly float[] noises;

    private BackgroundMesh(int width, int height)
    {
        this.width = width;
        this.height = height;
        var cell = Math.Min(width, height) < 512 ? CellPx / 2 : CellPx;
        columns = Math.Max(1, (width + (cell / 2)) / cell);
        rows = Math.Max(1, (height + (cell / 2)) / cell);
        levels = new float[columns * rows];
        noises = new float[columns * rows];
    }

    /// <summary>The median level; NaN when no sample is defined.</summary>
    public float Level { get; private set; }

    /// <summary>The median noise.</summary>
    public float Noise { get; private set; }

    /// <summary>How much more samples a few pixels apart differ than neighbours do, slopes not counted: 1 for a plain sky, large for structure.</summary>
    public float Structure { get; private set; }

    /// <summary>The share of cells whose level is near the top of the format.</summary>
    public double OverexposedShare { get; private set; }

    public static BackgroundMesh Of(
        float[] samples,
        int width,
        int height,
        float step,
        float? dead,
        float most = float.PositiveInfinity,
        int lag = 1
    )
    {
        var mesh = new BackgroundMesh(width, height);
        var ratios = new float[mesh.levels.Length];
        Parallel.For(
            0,
            mesh.rows,
            () => new CellBuffers(),
            (row, _, buffers) =>
            {
                for (var column = 0; column < mesh.columns; column++)
                {
                    ratios[(row * mesh.columns) + column] = mesh.MeasureCell(
                        samples,
                        row,
                        column,
                        step,
                        dead,
                        lag,
                        buffers
                    );
                }

                return buffers;
            },
            _ => { }
        );
        mesh.OverexposedShare =
            mesh.levels.Count(level => level >= 0.95f * most) / (double)mesh.levels.Length;
        mesh.Structure = MedianOf(ratios);
        mesh.FillHoles();
        mesh.Quieten();
        mesh.Level = MedianOf(mesh.levels);
        mesh.Noise = MedianOf(mesh.noises);
        return mesh;
    }

    /// <summary>Level and noise at a pixel, counted from 0.</summary>
    public (double Level, double Noise) At(double x, double y)
    {
        var (i, u) = Place(x, width, columns);
        var (j, v) = Place(y, height, rows);
        Span<double> across = stackalloc double[4];
        for (var row = 0; row < 4; row++)
        {
            across[row] = Curve(
                Knot(i - 1, j - 1 + row),
                Knot(i, j - 1 + row),
                Knot(i + 1, j - 1 + row),
                Knot(i + 2, j - 1 + row),
                u
            );
        }

        var (i0, i1) = (Math.Max(i, 0), Math.Min(i + 1, columns - 1));
        var (j0, j1) = (Math.Max(j, 0), Math.Min(j + 1, rows - 1));
        var south = double.Lerp(noises[(j0 * columns) + i0], noises[(j0 * columns) + i1], u);
        var north = double.Lerp(noises[(j1 * columns) + i0], noises[(j1 * columns) + i1], u);
        return (Curve(across[0], across[1], across[2], across[3], v), double.Lerp(south, north, v));
    }

    /// <summary>Level plus some times the noise along a row.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void FillRow(int y, double times, Span<float> result)
    {
        var (j, v) = Place(y, height, rows);
        var (j0, j1) = (Math.Max(j, 0), Math.Min(j + 1, rows - 1));
        var knots = new double[columns + 4];
        for (var i = -2; i < columns + 2; i++)
        {
            var column = Math.Clamp(i, 0, columns - 1);
            knots[i + 2] =
                Curve(Knot(i, j - 1), Knot(i, j), Knot(i, j + 1), Knot(i, j + 2), v)
                + (
                    times
                    * double.Lerp(
                        noises[(j0 * columns) + column],
                        noises[(j1 * columns) + column],
                        v
                    )
                );
        }

        var cell = (double)width / columns;
        for (var i = -1; i < columns; i++)
        {
            var from = Math.Max(0, (int)Math.Ceiling(((i + 0.5) * cell) - 0.5));
            var to = Math.Min(width, (int)Math.Ceiling(((i + 1.5) * cell) - 0.5));
            var (before, a, b, after) = (knots[i + 1], knots[i + 2], knots[i + 3], knots[i + 4]);
            var slope = (float)((b - before) / 2.0);
            var square = (float)(before - (2.5 * a) + (2.0 * b) - (after / 2.0));
            var cube = (float)(((after - before) / 2.0) + (1.5 * (a - b)));
            var (start, step) = (
                (float)((from + 0.5 - ((i + 0.5) * cell)) / cell),
                (float)(1.0 / cell)
            );
            var level = (float)a;
            for (var x = from; x < to; x++)
            {
                var u = start + (step * (x - from));
                result[x] = level + (u * (slope + (u * (square + (u * cube)))));
            }
        }
    }

    /// <summary>A smooth curve through four points at -1, 0, 1 and 2, between the middle two: the sky's slope bends where a cell ends, but does not break.</summary>
    private static double Curve(double before, double a, double b, double after, double u) =>
        a
        + (
            u
            * (
                ((b - before) / 2.0)
                + (
                    u
                    * (
                        before
                        - (2.5 * a)
                        + (2.0 * b)
                        - (after / 2.0)
                        + (u * (((after - before) / 2.0) + (1.5 * (a - b))))
                    )
                )
            )
        );

    /// <summary>The level of a cell; beyond the border the slope goes on.</summary>
    private double Knot(int column, int row)
    {
        var (i, beyondX) = Inside(column, columns);
        var (j, beyondY) = Inside(row, rows);
        double level = levels[(j * columns) + i];
        if (beyondX != 0 && columns > 1)
        {
            var inner = levels[(j * columns) + i - Math.Sign(beyondX)];
            level += Math.Abs(beyondX) * (double)(levels[(j * columns) + i] - inner);
        }

        if (beyondY != 0 && rows > 1)
        {
            var inner = levels[((j - Math.Sign(beyondY)) * columns) + i];
            level += Math.Abs(beyondY) * (double)(levels[(j * columns) + i] - inner);
        }

        return level;
    }

    private static (int Cell, int Beyond) Inside(int cell, int cells) =>
        cell < 0 ? (0, cell)
        : cell >= cells ? (cells - 1, cell - cells + 1)
        : (cell, 0);

    /// <summary>The cell whose middle comes before a pixel (-1 before the first), and how far on towards the next middle it is.</summary>
    private static (int Cell, double Part) Place(double pixel, int size, int cells)
    {
        var place = Math.Clamp(((pixel + 0.5) * cells / size) - 0.5, -0.5, cells - 0.5);
        var cell = (int)Math.Floor(place);
        return (cell, place - cell);
    }

    private static float MedianOf(float[] values)
    {
        var finite = Array.FindAll(values, float.IsFinite);
        if (finite.Length == 0)
        {
            return float.NaN;
        }

        Array.Sort(finite);
        return finite[finite.Length / 2];
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private float MeasureCell(
        float[] samples,
        int row,
        int column,
        float step,
        float? dead,
        int lag,
        CellBuffers buffers
    )
    {
        var cell = (row * columns) + column;
        var (x0, x1) = (
            (int)((long)column * width / columns),
            (int)((column + 1L) * width / columns)
        );
        var (y0, y1) = ((int)((long)row * height / rows), (int)((row + 1L) * height / rows));

        // About 512 samples a cell: every fourth row, every second column, odd and even ones in turn.
        var rowStep = Math.Max(1, (y1 - y0) / 16);
        var columnStep = Math.Max(1, (x1 - x0) / 32);
        var (count, steps, looked) = (0, 0, 0);
        for (var y = y0; y < y1; y += rowStep)
        {
            var start = x0 + (columnStep > 1 ? (y - y0) / rowStep % columnStep : 0);
            for (var x = start; x < x1 && count < buffers.Values.Length; x += columnStep)
            {
                looked++;
                var value = samples[(y * width) + x];
                if (!float.IsFinite(value) || value == dead)
                {
                    continue;
                }

                buffers.Values[count++] = value;
                if (x < FarBendPx || x + FarBendPx >= width || (count & 3) != 0)
                {
                    continue;
                }

                var at = (y * width) + x;
                var next = Math.Abs(samples[at + lag] - value);
                var bend = Bend(samples, at, NearBendPx);
                var farBend = Bend(samples, at, FarBendPx);
                if (float.IsFinite(next + bend + farBend))
                {
                    buffers.Steps[steps] = next;
                    buffers.Bends[steps] = bend;
                    buffers.FarBends[steps++] = farBend;
                }
            }
        }

        if (count < Math.Min(LeastSamples, looked) || count * 10 < looked || count == 0)
        {
            (levels[cell], noises[cell]) = (float.NaN, float.NaN);
            return float.NaN;
        }

        var values = buffers.Values.AsSpan(0, count);
        values.Sort();
        (levels[cell], noises[cell]) = LevelOf(values, step);
        if (steps < 16)
        {
            return 1f;
        }

        // Of normal samples the middle one of the differences is 0.954 sigma, that of a - 2 b + c sqrt(6) 0.6745 sigma.
        var fine = Math.Max(MiddleOf(buffers.Steps, steps) / 0.954f, 0.4f * step);
        var near = Math.Max(MiddleOf(buffers.Bends, steps) / 1.652f, 0.4f * step);
        var far = Math.Max(MiddleOf(buffers.FarBends, steps) / 1.652f, 0.4f * step);

        // A slope across the cell (strong vignetting) widens the scatter, but is no noise: the mesh follows it.
        if (noises[cell] > 1.3f * far && far > 0f)
        {
            noises[cell] = far;
        }

        return fine > 0f ? near / fine : 1f;
    }

    private static float Bend(float[] samples, int at, int lag) =>
        Math.Abs(samples[at - lag] + samples[at + lag] - (2f * samples[at]));

    private static float MiddleOf(float[] values, int count)
    {
        values.AsSpan(0, count).Sort();
        return values[count / 2];
    }

    /// <summary>Mean and scatter of what lies within 3 sigma of the median; the lower half, where no stars are, gives the first sigma.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static (float Level, float Noise) LevelOf(ReadOnlySpan<float> sorted, float step)
    {
        var middle = sorted[sorted.Length / 2];
        var sigma = Math.Max(middle - sorted[sorted.Length * 16 / 100], 0.5f * step);
        float level = middle,
            noise = sigma;
        for (var round = 0; round < 2; round++)
        {
            var from = FirstAbove(sorted, level - (3f * noise));
            var to = FirstAbove(sorted, level + (3f * noise) + (1e-6f * Math.Abs(level)));
            if (to - from < 8)
            {
                break;
            }

            double sum = 0.0,
                squares = 0.0;
            foreach (var value in sorted[from..to])
            {
                var d = (double)value - middle;
                sum += d;
                squares += d * d;
            }

            var mean = sum / (to - from);
            level = (float)(middle + mean);

            // What is cut off beyond 3 sigma makes the scatter 1.4 % too small.
            var scatter = 1.014 * Math.Sqrt(Math.Max(0.0, (squares / (to - from)) - (mean * mean)));
            noise = (float)Math.Max(scatter, 0.29 * step);
        }

        return (level, noise);
    }

    private static int FirstAbove(ReadOnlySpan<float> sorted, float value)
    {
        var (low, high) = (0, sorted.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (sorted[middle] < value)
            {
                low = middle + 1;
            }
            else
            {
                high = middle;
            }
        }

        return low;
    }

    /// <summary>Cells without samples take the mean of their neighbours, from the rim of the hole inwards.</summary>
    private void FillHoles()
    {
        for (var again = true; again; )
        {
            again = false;
            var (oldLevels, oldNoises) = ((float[])levels.Clone(), (float[])noises.Clone());
            for (var cell = 0; cell < levels.Length; cell++)
            {
                if (float.IsFinite(oldLevels[cell]))
                {
                    continue;
                }

                var (level, noise, count) = (0f, 0f, 0);
                foreach (var near in Neighbours(cell))
                {
                    if (float.IsFinite(oldLevels[near]))
                    {
                        level += oldLevels[near];
                        noise += oldNoises[near];
                        count++;
                    }
                }

                if (count > 0)
                {
                    (levels[cell], noises[cell]) = (level / count, noise / count);
                    again = true;
                }
            }
        }
    }

    /// <summary>A cell that a bright star has lifted (its noise tells) takes the median of its neighbours.</summary>
    private void Quieten()
    {
        var (oldLevels, oldNoises) = ((float[])levels.Clone(), (float[])noises.Clone());
        for (var cell = 0; cell < levels.Length; cell++)
        {
            var near = Neighbours(cell).ToArray();
            if (near.Length < 3)
            {
                continue;
            }

            var noise = MedianOf(Array.ConvertAll(near, i => oldNoises[i]));
            if (oldNoises[cell] > 2f * noise)
            {
                noises[cell] = noise;
                levels[cell] = Math.Min(
                    oldLevels[cell],
                    MedianOf(Array.ConvertAll(near, i => oldLevels[i])) + (3f * noise)
                );
            }
        }
    }

    private IEnumerable<int> Neighbours(int cell)
    {
        var (row, column) = (cell / columns, cell % columns);
        for (var y = Math.Max(0, row - 1); y <= Math.Min(rows - 1, row + 1); y++)
        {
            for (var x = Math.Max(0, column - 1); x <= Math.Min(columns - 1, column + 1); x++)
            {
                if ((y, x) != (row, column))
                {
                    yield return (y * columns) + x;
                }
            }
        }
    }

    private sealed class CellBuffers
    {
        public float[] Values { get; } = new float[4096];

        public float[] Steps { get; } = new float[2048];

        public float[] Bends { get; } = new float[2048];

        public float[] FarBends { get; } = new float[2048];
    }
}
